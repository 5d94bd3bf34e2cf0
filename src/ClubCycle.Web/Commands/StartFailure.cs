using ClubCycle.Data.Embedded;
using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Options;
using Npgsql;

namespace ClubCycle.Web.Commands;

/// <summary>What the surroundings can do to a start, as one message with the next step. Anything else is a bug and keeps its trace.</summary>
internal static class StartFailure
{
    public static string? MessageOf(Exception failure) => failure switch
    {
        DatabaseUnavailableException unavailable => unavailable.Message,
        OptionsValidationException settings => string.Join(' ', settings.Failures),
        IOException { InnerException: AddressInUseException } taken => $"{taken.Message} Stop the other program, or choose another address with ASPNETCORE_URLS, for example ASPNETCORE_URLS=http://localhost:5081.",
        IOException { InnerException: System.Net.Sockets.SocketException } address => $"{address.Message} Choose another address with ASPNETCORE_URLS, for example ASPNETCORE_URLS=http://localhost:5080.",
        System.Net.Sockets.SocketException socket => $"The address cannot be used: {socket.Message}. Choose another one with ASPNETCORE_URLS, for example ASPNETCORE_URLS=http://localhost:5081.",
        FormatException { Source: "Microsoft.AspNetCore.Http" or "Microsoft.AspNetCore.Server.Kestrel.Core" } format => $"{format.Message} Write ASPNETCORE_URLS like http://localhost:5080.",
        PostgresException { SqlState: PostgresErrorCodes.InsufficientPrivilege } denied => $"The database role may not do this: {denied.MessageText}. Run the migrate command as the owner of the tables (ConnectionStrings__ClubCycleOwner).",
        PostgresException { SqlState: PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.InvalidSchemaName } => "The database is not up to date. Run: ClubCycle.Web migrate. Or start with --migrate.",
        IOException or UnauthorizedAccessException => $"A file or folder cannot be used: {failure.Message} Check that it is there, that this user may use it, and that there is room on the disk.",
        _ => null,
    };
}
