namespace SecondShore.Engine.Basin.Forms;

/// <summary>Kinds of bottom form, in the words of the trade.</summary>
public enum FormClass
{
    /// <summary>The drowned bed of the valley's river: centre line and edges.</summary>
    MainChannel,

    /// <summary>The drowned bed of a tributary: centre line and edges.</summary>
    SideChannel,

    /// <summary>A bend of a channel, at its apex.</summary>
    ChannelBend,

    /// <summary>Where two channels meet.</summary>
    Junction,

    /// <summary>Near-level bottom of some width.</summary>
    Flat,

    /// <summary>A nose of land that runs on under the main lake: its crest line, from the shore down.</summary>
    MainPoint,

    /// <summary>A point inside an arm or cove.</summary>
    SecondaryPoint,

    /// <summary>A bank as steep as a wall, along its foot.</summary>
    BluffWall,

    /// <summary>Where a bluff wall turns to sloping bottom.</summary>
    BluffEnd,

    /// <summary>A rise with deeper water all round.</summary>
    Hump,

    /// <summary>The low place of a ridge between two rises, or between a rise and a point.</summary>
    Saddle,

    /// <summary>A line where near-level bottom breaks off into a drop.</summary>
    Ledge,

    /// <summary>Evenly sloping bottom.</summary>
    Slope,

    /// <summary>A hollow with shallower bottom all round.</summary>
    Hole,
}
