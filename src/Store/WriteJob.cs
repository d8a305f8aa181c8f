using Microsoft.Data.Sqlite;

namespace SecondShore.Store;

/// <summary>Work that waits for the writer. It is answered after the commit, never before.</summary>
public abstract class WriteJob
{
    /// <summary>Does the work inside the writer's transaction.</summary>
    public abstract Task RunAsync(SqliteConnection connection, SqliteTransaction transaction);

    /// <summary>The commit is on disk.</summary>
    public abstract void Answer();

    /// <summary>Nothing of the work was kept.</summary>
    public abstract void Fail(Exception why);
}

/// <summary>Work with a result.</summary>
public sealed class WriteJob<T>(Func<Work, Task<T>> work, CancellationToken cancel) : WriteJob
{
    private readonly TaskCompletionSource<T> _done = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private T? _result;

    /// <summary>Ends with the commit, or with the fault.</summary>
    public Task<T> Done => _done.Task;

    /// <inheritdoc/>
    public override async Task RunAsync(SqliteConnection connection, SqliteTransaction transaction)
    {
        cancel.ThrowIfCancellationRequested();
        _result = await work(new Work(connection, transaction, cancel)).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public override void Answer() => _done.TrySetResult(_result!);

    /// <inheritdoc/>
    public override void Fail(Exception why)
    {
        if (why is OperationCanceledException) _done.TrySetCanceled(CancellationToken.None);
        else _done.TrySetException(why);
    }
}
