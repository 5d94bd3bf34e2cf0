using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace ClubCycle.Data;

/// <summary>Tells PostgreSQL the context's club each time a connection opens; the row security policies read it.</summary>
/// <remarks>Npgsql resets pooled connections, so the setting never outlives the operation it was made for.</remarks>
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
        var scope = ((ClubCycleDb?)eventData.Context)?.Scope ?? ClubScope.None;
        var command = connection.CreateCommand();
        command.CommandText = "select set_config('app.club', $1, false)";
        var parameter = command.CreateParameter();
        parameter.Value = scope.Setting;
        command.Parameters.Add(parameter);
        return command;
    }
}
