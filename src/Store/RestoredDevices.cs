using System.Globalization;
using Microsoft.Data.Sqlite;

namespace SecondShore.Store;

/// <summary>
/// Devices after a restore. A backup knows nothing of what was revoked after it: those tokens must not hold again, and where nobody can
/// tell which they are, it is said which hold.
/// </summary>
/// <param name="StillRevoked">Devices that the backup lets in and that were revoked since: they stay so.</param>
/// <param name="Hold">Devices whose tokens hold now.</param>
/// <param name="Known">Whether the database that stood there could be asked; else a device revoked since the backup may be among those that hold.</param>
public sealed record RestoredDevices(IReadOnlyList<string> StillRevoked, IReadOnlyList<string> Hold, bool Known)
{
    /// <summary>Carries revocations over from the database that stands at a path, and ends all pairing codes of the backup.</summary>
    internal static RestoredDevices Settle(SqliteConnection backup, string path, DateTimeOffset now)
    {
        if (!HasDevices(backup)) return new RestoredDevices([], [], true);
        List<(string Id, string At)>? revoked = RevokedIn(path);
        List<string> still = [];
        foreach ((string id, string at) in revoked ?? [])
            if (Do(backup, "update devices set revoked_at = $at where id = $id and revoked_at is null", ("$at", at), ("$id", id)) > 0) still.Add(id);
        Do(backup, "delete from pairing_codes");
        Do(backup, "insert into audit (at, device, action, detail, remote) values ($at, '', 'restored', $detail, '')",
            ("$at", now.UtcDateTime.ToString("O", CultureInfo.InvariantCulture)), ("$detail", string.Create(CultureInfo.InvariantCulture, $"{still.Count} revocations carried over")));
        return new RestoredDevices(still, Names(backup), revoked is not null);
    }

    // Null where the database that stood there cannot be asked: it is missing, or damaged.
    private static List<(string, string)>? RevokedIn(string path)
    {
        if (!File.Exists(path)) return null;
        try
        {
            using SqliteConnection old = new(new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWrite, Pooling = false }.ToString());
            old.Open();
            List<(string, string)> rows = [];
            if (!HasDevices(old)) return rows;
            using SqliteCommand command = old.CreateCommand();
            command.CommandText = "select id, revoked_at from devices where revoked_at is not null";
            using SqliteDataReader reader = command.ExecuteReader();
            while (reader.Read()) rows.Add((reader.GetString(0), reader.GetString(1)));
            return rows;
        }
        catch (SqliteException)
        {
            return null;
        }
    }

    private static List<string> Names(SqliteConnection backup)
    {
        using SqliteCommand command = backup.CreateCommand();
        command.CommandText = "select id || ' (' || name || ')' from devices where revoked_at is null order by paired_at, id";
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> names = [];
        while (reader.Read()) names.Add(reader.GetString(0));
        return names;
    }

    private static bool HasDevices(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "select count(*) from sqlite_master where type = 'table' and name = 'devices'";
        return command.ExecuteScalar() is long and > 0;
    }

    private static int Do(SqliteConnection connection, string sql, params ReadOnlySpan<(string Name, string Value)> values)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        foreach ((string name, string value) in values) command.Parameters.AddWithValue(name, value);
        return command.ExecuteNonQuery();
    }
}
