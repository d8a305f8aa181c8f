namespace SecondShore.Bench;

/// <summary>What a measured host keeps its records in.</summary>
/// <param name="Title">Its name, for what is said of a figure.</param>
/// <param name="Suffix">What its figures' names end with.</param>
/// <param name="Variable">The setting that tells a connection to an empty database; null where the host makes its own.</param>
internal sealed record HostDatabase(string Title, string Suffix, string? Variable)
{
    public static HostDatabase Sqlite { get; } = new("SQLite", "", null);

    public static HostDatabase Postgres { get; } = new("PostgreSQL", "-postgresql", "SECONDSHORE_LOAD_POSTGRES");

    /// <exception cref="CannotMeasureException">No server is told.</exception>
    public string? Connection() => Variable is null
        ? null
        : Environment.GetEnvironmentVariable(Variable)
            ?? throw new CannotMeasureException($"{Variable} tells no connection to an empty database of {Title}.");
}
