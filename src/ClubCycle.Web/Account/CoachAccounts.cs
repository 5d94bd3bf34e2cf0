using System.Security.Cryptography;
using System.Text;
using ClubCycle.Data.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Account;

/// <summary>Accounts, with two things the library leaves out: recovery codes are stored as hashes, and a password can be replaced without the old one.</summary>
internal sealed class CoachAccounts(
    IUserStore<ClubUser> store, IOptions<IdentityOptions> options, IPasswordHasher<ClubUser> hasher, IEnumerable<IUserValidator<ClubUser>> userRules,
    IEnumerable<IPasswordValidator<ClubUser>> passwordRules, ILookupNormalizer names, IdentityErrorDescriber errors, IServiceProvider services, ILogger<UserManager<ClubUser>> log)
    : UserManager<ClubUser>(store, options, hasher, userRules, passwordRules, names, errors, services, log)
{
    public const int Codes = 10;

    // No signs that look alike; 24 of 33 signs are 121 bits, enough for a fast hash (ASVS 6.5.2 asks for 112).
    private const string Signs = "abcdefghjkmnpqrstuvwxyz0123456789";
    private const int SignsOfCode = 24;

    /// <summary>For whoever has shown in another way who they are.</summary>
    public async Task<IdentityResult> ReplacePasswordAsync(ClubUser user, string password) =>
        await UpdatePasswordHash(user, password, validatePassword: true) is { Succeeded: false } refused ? refused : await UpdateUserAsync(user);

    /// <summary>Of an authenticator app; counts for nothing until the second factor is on.</summary>
    public async Task SetKeyAsync(ClubUser user, string key)
    {
        await ((IUserAuthenticatorKeyStore<ClubUser>)Store).SetAuthenticatorKeyAsync(user, key, CancellationToken);
        await UpdateAsync(user);
    }

    public override async Task<IEnumerable<string>?> GenerateNewTwoFactorRecoveryCodesAsync(ClubUser user, int number)
    {
        var codes = Enumerable.Range(0, number).Select(_ => CreateTwoFactorRecoveryCode()).ToList();
        await ((IUserTwoFactorRecoveryCodeStore<ClubUser>)Store).ReplaceCodesAsync(user, codes.Select(Hash), CancellationToken);
        return (await UpdateAsync(user)).Succeeded ? codes : null;
    }

    public override Task<IdentityResult> RedeemTwoFactorRecoveryCodeAsync(ClubUser user, string code) => base.RedeemTwoFactorRecoveryCodeAsync(user, Hash(code));

    /// <summary>In groups of six, so that it can be copied from paper.</summary>
    protected override string CreateTwoFactorRecoveryCode() =>
        string.Join('-', RandomNumberGenerator.GetString(Signs.AsSpan(), SignsOfCode).Chunk(6).Select(group => new string(group)));

    private static string Hash(string code) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(code.Trim().ToLowerInvariant().Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal))));
}
