namespace SecondShore.Store.Tests;

/// <summary>A database of a test, opened again after an end or a crash.</summary>
public interface IStoreUnderTest : IDisposable
{
    IDatabase Open();
}

internal sealed class SqliteUnderTest : IStoreUnderTest
{
    private readonly TempData _folder = new();

    public string DatabasePath => _folder.File("second-shore.db");

    public IDatabase Open() => SqliteDatabase.Open(DatabasePath);

    public void Dispose() => _folder.Dispose();
}

internal sealed class PostgresUnderTest(string connectionText) : IStoreUnderTest
{
    public IDatabase Open() => PostgresDatabase.Open(connectionText);

    public void Dispose()
    {
    }
}
