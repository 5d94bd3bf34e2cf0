using ClubCycle.Data;
using ClubCycle.Data.Audit;
using ClubCycle.Data.Embedded;
using ClubCycle.Web.Account;
using ClubCycle.Web.Hosting;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Web.Commands;

/// <summary>A one-time sign-in link for somebody whom no head coach can give one: the last head coach without a password.</summary>
internal static class ResetPasswordCommand
{
    public const string DropSecondFactor = "--drop-second-factor";

    public static async Task<int> RunAsync(string[] arguments, IClock clock, TextWriter output, TextWriter errors, CancellationToken cancel = default)
    {
        if (arguments is not [var email, .. var rest] || rest is not ([] or [DropSecondFactor]))
        {
            await errors.WriteLineAsync($"Write: reset-password EMAIL [{DropSecondFactor}].");
            return ExitCode.Problems;
        }

        try
        {
            await using var database = await DatabaseChoice.OpenOrJoinAsync(CommandSettings.Read().DatabaseAddress(), cancel);
            await using var services = new ServiceCollection().AddSingleton(clock).AddLogging().AddClubCycleData(database.ConnectionString).AddScoped<SignInLinks>().BuildServiceProvider();
            await using var scope = services.CreateAsyncScope();
            return await RunAsync(scope.ServiceProvider, email, rest.Length > 0, output, errors, cancel);
        }
        catch (Exception failure) when (StartFailure.MessageOf(failure) is { } message)
        {
            await errors.WriteLineAsync(message);
            return ExitCode.Failed;
        }
    }

    internal static async Task<int> RunAsync(IServiceProvider services, string email, bool dropsSecondFactor, TextWriter output, TextWriter errors, CancellationToken cancel)
    {
        var db = services.GetRequiredService<ClubCycleDb>();
        var name = email.Trim().ToUpperInvariant();
        if (await db.Users.SingleOrDefaultAsync(u => u.NormalizedEmail == name, cancel) is not { } user)
        {
            await errors.WriteLineAsync("There is no account with this e-mail in this database.");
            return ExitCode.Problems;
        }

        var trail = services.GetRequiredService<AccountTrail>();
        if (dropsSecondFactor && user.TwoFactorEnabled)
        {
            user.TwoFactorEnabled = false;
            await db.SaveChangesAsync(cancel);
            await trail.NoteAsync(user.ClubId, null, "account.second-factor-off", user.Id.ToString("D"), cancel);
        }

        var token = await services.GetRequiredService<SignInLinks>().CreateAsync(user.Id, cancel);
        await trail.NoteAsync(user.ClubId, null, "account.link-made", user.Id.ToString("D"), cancel);
        await output.WriteLineAsync($"""
            Open this behind the address of your ClubCycle, once and within a day:

                {AccountEndpoints.LinkPath}/{token}

            Then choose a new password under Account, within an hour.
            """);
        return ExitCode.Done;
    }
}
