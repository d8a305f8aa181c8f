namespace SecondShore.Engine.Basin.Forms;

/// <summary>Form classes in the words of the trade.</summary>
public static class FormWords
{
    /// <summary>The usual word, lower case, without an article.</summary>
    public static string Of(FormClass form) => form switch
    {
        FormClass.MainChannel => "main channel edge",
        FormClass.SideChannel => "side channel edge",
        FormClass.ChannelBend => "channel bend",
        FormClass.Junction => "channel junction",
        FormClass.Flat => "flat",
        FormClass.MainPoint => "main-lake point",
        FormClass.SecondaryPoint => "secondary point",
        FormClass.BluffWall => "bluff wall",
        FormClass.BluffEnd => "bluff end",
        FormClass.Hump => "hump",
        FormClass.Saddle => "saddle",
        FormClass.Ledge => "ledge",
        FormClass.Slope => "slope",
        _ => "hole",
    };
}
