namespace SecondShore.TestKit;

/// <summary>Input that is wrong or odd, and what must become of it under any verb that reads a lake.</summary>
/// <param name="Name">A sentence-like name.</param>
/// <param name="Files">The files, by name.</param>
/// <param name="ExitCode">3 when it must be refused; 0 when it is read with what is odd said aloud.</param>
/// <param name="Phrase">Words that the message must hold; empty for odd input that is simply right.</param>
/// <param name="Open">The file to name instead of the folder; null for the folder.</param>
public sealed record BadInput(string Name, IReadOnlyDictionary<string, byte[]> Files, int ExitCode, string Phrase, string? Open = null)
{
    /// <summary>Writes the files under a folder and gives the path that a user would name.</summary>
    public string WriteTo(string folder)
    {
        string root = Path.Combine(folder, "lake");
        if (Files.Count > 0 || Open is null) Directory.CreateDirectory(root);
        foreach ((string name, byte[] bytes) in Files)
        {
            string path = Path.Combine(root, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, bytes);
        }

        return Open is null ? root : Path.Combine(root, Open);
    }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
