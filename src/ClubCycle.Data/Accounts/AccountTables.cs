using ClubCycle.Data.Clubs;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.Accounts;

/// <summary>Schema <c>accounts</c>: found by e-mail before any club is known, so not behind the club's row security.</summary>
internal static class AccountTables
{
    // WebAuthn level 3, 4 (from memory).
    private const int LongestCredentialId = 1023;

    public static void Configure(ModelBuilder builder)
    {
        builder.Entity<ClubUser>(user =>
        {
            user.ToTable("users", ClubCycleDb.AccountsSchema);
            user.Property(u => u.Id).ValueGeneratedNever();
            user.Property(u => u.DisplayName).HasMaxLength(ClubUser.LongestName);
            user.Property(u => u.Language).HasMaxLength(2);
            user.Property(u => u.Role).HasConversion<string>().HasMaxLength(20);

            // Club data refers to people by club and id, so that it never refers to another club's.
            user.HasAlternateKey(u => new { u.ClubId, u.Id });
            user.HasOne<ClubRow>().WithMany().HasForeignKey(u => u.ClubId).OnDelete(DeleteBehavior.Cascade);
        });
        builder.Entity<SignInRow>(signIn =>
        {
            signIn.ToTable("sign_ins", ClubCycleDb.AccountsSchema);
            signIn.Property(s => s.Id).ValueGeneratedNever();
            signIn.Property(s => s.Browser).HasMaxLength(SignInRow.LongestBrowser);
            signIn.HasOne<ClubUser>().WithMany().HasForeignKey(s => s.UserId).OnDelete(DeleteBehavior.Cascade);
        });
        builder.Entity<IdentityUserClaim<Guid>>().ToTable("user_claims", ClubCycleDb.AccountsSchema);
        builder.Entity<IdentityUserLogin<Guid>>().ToTable("user_logins", ClubCycleDb.AccountsSchema);
        builder.Entity<IdentityUserToken<Guid>>().ToTable("user_tokens", ClubCycleDb.AccountsSchema);
        // As the library's third schema has them; said here, so that the model does not depend on how the host sets Identity up.
        builder.Entity<IdentityUserPasskey<Guid>>(passkey =>
        {
            passkey.ToTable("user_passkeys", ClubCycleDb.AccountsSchema);
            passkey.HasKey(p => p.CredentialId);
            passkey.Property(p => p.CredentialId).HasMaxLength(LongestCredentialId);
            passkey.HasOne<ClubUser>().WithMany().HasForeignKey(p => p.UserId).OnDelete(DeleteBehavior.Cascade);
            passkey.OwnsOne(p => p.Data).ToJson();
        });
        builder.Entity<DataProtectionKey>().ToTable("data_protection_keys", ClubCycleDb.AccountsSchema);
    }
}
