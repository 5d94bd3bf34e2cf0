using ClubCycle.Data;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption;
using Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption.ConfigurationModel;
using Microsoft.AspNetCore.DataProtection.KeyManagement;

namespace ClubCycle.Web.Account;

/// <summary>The keys of sessions and form tokens: in the database, so that every node has them, and sealed with a key that is not in it.</summary>
internal static partial class KeyRing
{
    public static void AddKeyRing(this IServiceCollection services, IConfiguration settings)
    {
        services.AddDataProtection()
            .SetApplicationName("ClubCycle")
            .PersistKeysToDbContext<ClubCycleDb>()
            .UseCryptographicAlgorithms(new AuthenticatedEncryptorConfiguration { EncryptionAlgorithm = EncryptionAlgorithm.AES_256_GCM });
        if (KeyFile.Choose(settings) is { } file)
        {
            services.AddSingleton(file);
            services.Configure<KeyManagementOptions>(keys => keys.XmlEncryptor = new SealedKey(file));
        }
        else
        {
            services.AddHostedService<OpenRing>();
        }
    }

    /// <summary>Says once a start that sessions can be made by whoever reads the database.</summary>
    private sealed partial class OpenRing(ILogger<OpenRing> log) : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken)
        {
            LiesOpen();
            return Task.CompletedTask;
        }

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        [LoggerMessage(LogLevel.Warning, "The keys of sessions lie unencrypted in the database and in every backup. Make a file with openssl rand -hex 32 and name it in Keys__File.")]
        private partial void LiesOpen();
    }
}
