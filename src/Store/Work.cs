using System.Data.Common;
using Dapper;

namespace SecondShore.Store;

/// <summary>SQL inside one piece of work: one connection, one transaction.</summary>
public sealed class Work(DbConnection connection, DbTransaction? transaction, CancellationToken cancel)
{
    /// <summary>The connection, for what Dapper does not offer.</summary>
    public DbConnection Connection => connection;

    /// <summary>Stops the work.</summary>
    public CancellationToken Cancel => cancel;

    /// <summary>Runs a statement; returns the number of rows it changed.</summary>
    public Task<int> DoAsync(string sql, object? values = null) => connection.ExecuteAsync(Command(sql, values));

    /// <summary>Rows of a query.</summary>
    public async Task<IReadOnlyList<T>> RowsAsync<T>(string sql, object? values = null) =>
        (await connection.QueryAsync<T>(Command(sql, values)).ConfigureAwait(false)).AsList();

    /// <summary>The first row of a query, or the default.</summary>
    public Task<T?> FirstAsync<T>(string sql, object? values = null) => connection.QueryFirstOrDefaultAsync<T>(Command(sql, values));

    private CommandDefinition Command(string sql, object? values) => new(sql, values, transaction, cancellationToken: cancel);
}
