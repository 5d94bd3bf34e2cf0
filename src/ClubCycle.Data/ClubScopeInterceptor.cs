using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace ClubCycle.Data;

/// <summary>Tells PostgreSQL the context's club and origin each time a connection opens: row security reads the first, what is told of changes holds the second.</summary>
/// <remarks>Npgsql resets pooled connections, so the settings never outlive the operation they were made for.</remarks>
internal sealed class ClubScopeInterceptor : DbConnectionInterceptor
{
    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = SettingOf(connection, eventData);
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = SettingOf(connection, eventData);
        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    private static DbCommand SettingOf(DbConnection connection, ConnectionEndEventData eventData)
    {
        var db = (ClubCycleDb?)eventData.Context;
        var command = connection.CreateCommand();
        command.CommandText = "select set_config('app.club', $1, false), set_config('app.origin', $2, false)";
        foreach (var value in new[] { (db?.Scope ?? ClubScope.None).Setting, db?.Origin?.ToString() ?? "" })
        {
            var parameter = command.CreateParameter();
            parameter.Value = value;
            command.Parameters.Add(parameter);
        }

        return command;
    }
}
