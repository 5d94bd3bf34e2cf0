using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace ClubCycle.Web.Account;

/// <summary>
/// Addresses that sign one person in once, within a day: for a first start without e-mail, and for invitations.
/// The token names the person and holds 32 random bytes, of which only the SHA-256 is stored. A new link replaces the old one.
/// </summary>
public sealed class SignInLinks(ClubCycleDb db, IClock clock)
{
    public static readonly Duration Lifetime = Duration.FromHours(24);

    private const string Provider = "ClubCycle";
    private const string Name = "sign-in-link";
    private const int IdBytes = 16;
    private const int SecretBytes = 32;

    public async Task<string> CreateAsync(Guid user, CancellationToken cancel)
    {
        var token = new byte[IdBytes + SecretBytes];
        user.TryWriteBytes(token);
        RandomNumberGenerator.Fill(token.AsSpan(IdBytes));
        await Stored(user).ExecuteDeleteAsync(cancel);
        db.UserTokens.Add(new IdentityUserToken<Guid> { UserId = user, LoginProvider = Provider, Name = Name, Value = StoredValue(token, clock.GetCurrentInstant() + Lifetime) });
        await db.SaveChangesAsync(cancel);
        return Base64Url.EncodeToString(token);
    }

    /// <summary>Whom the link would sign in; changes nothing, so that a link preview does not use it up.</summary>
    public async Task<ClubUser?> LookAsync(string token, CancellationToken cancel) =>
        await MatchAsync(token, cancel) is { } match ? await db.Users.AsNoTracking().SingleOrDefaultAsync(u => u.Id == match.UserId, cancel) : null;

    /// <summary>Uses the link up. Of two at the same time only one gets the person.</summary>
    public async Task<ClubUser?> UseAsync(string token, CancellationToken cancel)
    {
        if (await MatchAsync(token, cancel) is not { } match)
        {
            return null;
        }

        var used = await Stored(match.UserId).Where(t => t.Value == match.Value).ExecuteDeleteAsync(cancel);
        return used == 1 ? await db.Users.SingleOrDefaultAsync(u => u.Id == match.UserId, cancel) : null;
    }

    private async Task<IdentityUserToken<Guid>?> MatchAsync(string token, CancellationToken cancel)
    {
        if (!Base64Url.IsValid(token, out var length) || length != IdBytes + SecretBytes)
        {
            return null;
        }

        var bytes = Base64Url.DecodeFromChars(token);
        var stored = await Stored(new Guid(bytes.AsSpan(0, IdBytes))).AsNoTracking().SingleOrDefaultAsync(cancel);
        return stored?.Value?.Split(' ') is [var hash, var until]
            && CryptographicOperations.FixedTimeEquals(Convert.FromHexString(hash), SHA256.HashData(bytes))
            && clock.GetCurrentInstant() < Instant.FromUnixTimeSeconds(long.Parse(until, CultureInfo.InvariantCulture))
            ? stored
            : null;
    }

    private IQueryable<IdentityUserToken<Guid>> Stored(Guid user) =>
        db.UserTokens.Where(t => t.UserId == user && t.LoginProvider == Provider && t.Name == Name);

    private static string StoredValue(byte[] token, Instant until) =>
        $"{Convert.ToHexString(SHA256.HashData(token))} {until.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture)}";
}
