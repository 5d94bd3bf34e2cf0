using ClubCycle.Data.Clubs;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace ClubCycle.Data.Accounts;

/// <summary>Schema <c>accounts</c>: found by e-mail before any club is known, so not behind the club's row security.</summary>
internal static class AccountTables
{
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
        builder.Entity<DataProtectionKey>().ToTable("data_protection_keys", ClubCycleDb.AccountsSchema);
    }
}
