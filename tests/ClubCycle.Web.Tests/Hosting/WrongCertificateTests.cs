using System.Buffers.Binary;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using ClubCycle.Data;
using ClubCycle.TestKit;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace ClubCycle.Web.Tests.Hosting;

/// <summary>ASVS 12.3.2: a database that speaks TLS, asked as the program asks it, and what it gets to hear. Mail: see <c>WrongMailCertificateTests</c>.</summary>
public sealed class WrongCertificateTests : IDisposable
{
    private const string Secret = "secret-word";

    private readonly TemporaryFolder folder = TemporaryFolder.ReachableByAll();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("localhost", false)] // Signed by nobody that is known here.
    [InlineData("other.example.org", true)] // By an authority that is trusted, for another name.
    public async Task A_database_that_cannot_show_who_it_is_hears_neither_name_nor_password(string name, bool trusted)
    {
        using var certificate = TestCertificate.Make(name);
        await using TlsDatabase database = new(certificate);

        var refused = await Assert.ThrowsAnyAsync<NpgsqlException>(() => AskAsync(database, trusted ? certificate : null));

        Assert.IsType<AuthenticationException>(refused.InnerException);
        Assert.True(database.Asked > 0);
        Assert.Empty(database.Heard);
    }

    /// <summary>So that the one above is no mere matter of a server that never works.</summary>
    [Fact]
    public async Task A_database_with_the_right_name_and_a_trusted_authority_hears_them()
    {
        using var certificate = TestCertificate.Make("localhost");
        await using TlsDatabase database = new(certificate);

        await Assert.ThrowsAnyAsync<NpgsqlException>(() => AskAsync(database, certificate));

        Assert.Contains(database.Heard, heard => heard.Contains("planner", StringComparison.Ordinal));
        Assert.Contains(database.Heard, heard => heard.Contains(Secret, StringComparison.Ordinal));
    }

    /// <param name="authority">Whose signature is trusted, as <c>Root Certificate</c> names it; null for those that this machine knows.</param>
    private async Task AskAsync(TlsDatabase database, X509Certificate2? authority)
    {
        var address = $"Host=localhost;Port={database.Port};Username=planner;Password={Secret};Database=x;SSL Mode=VerifyFull;Pooling=false";
        if (authority is not null)
        {
            var file = Path.Combine(folder.Path, "authority.pem");
            await File.WriteAllTextAsync(file, authority.ExportCertificatePem(), Cancel);
            address += $";Root Certificate={file}";
        }

        await using var services = new ServiceCollection().AddClubCycleData(address).BuildServiceProvider();
        await using var db = await services.GetRequiredService<IDbContextFactory<ClubCycleDb>>().CreateDbContextAsync(Cancel);
        await db.Database.GetDbConnection().OpenAsync(Cancel);
    }

    /// <summary>Speaks as much of PostgreSQL's protocol as it takes to be told a password: yes to TLS, then "in clear text, please".</summary>
    private sealed class TlsDatabase : IAsyncDisposable
    {
        private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
        private readonly CancellationTokenSource _closing = new();
        private readonly X509Certificate2 _certificate;
        private readonly Task _serving;

        public TlsDatabase(X509Certificate2 certificate)
        {
            _certificate = certificate;
            _listener.Start();
            _serving = ServeAsync();
        }

        public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

        /// <summary>How often TLS was asked for.</summary>
        public int Asked { get; private set; }

        /// <summary>What was said to it under TLS.</summary>
        public ConcurrentQueue<string> Heard { get; } = [];

        public async ValueTask DisposeAsync()
        {
            await _closing.CancelAsync();
            await _serving;
            _listener.Stop();
            _closing.Dispose();
        }

        private async Task ServeAsync()
        {
            try
            {
                while (true)
                {
                    using var client = await _listener.AcceptTcpClientAsync(_closing.Token);
                    try
                    {
                        await TalkAsync(client.GetStream());
                    }
                    catch (Exception left) when (left is IOException or AuthenticationException)
                    {
                        // Whoever does not like the certificate hangs up.
                    }
                }
            }
            catch (OperationCanceledException)
            {
                // Closed.
            }
        }

        /// <summary>Lengths and codes: PostgreSQL's documentation, "Message Formats".</summary>
        private async Task TalkAsync(NetworkStream stream)
        {
            const int sslRequest = 80877103;
            var request = new byte[8];
            do
            {
                await stream.ReadExactlyAsync(request, _closing.Token);
                var isTls = BinaryPrimitives.ReadInt32BigEndian(request.AsSpan(4)) == sslRequest;
                await stream.WriteAsync(isTls ? "S"u8.ToArray() : "N"u8.ToArray(), _closing.Token);
            }
            while (BinaryPrimitives.ReadInt32BigEndian(request.AsSpan(4)) != sslRequest);

            Asked++;
            await using SslStream secured = new(stream);
            await secured.AuthenticateAsServerAsync(new SslServerAuthenticationOptions { ServerCertificate = _certificate }, _closing.Token);
            await HearAsync(secured);

            // AuthenticationCleartextPassword.
            await secured.WriteAsync(new byte[] { (byte)'R', 0, 0, 0, 8, 0, 0, 0, 3 }, _closing.Token);
            await HearAsync(secured);
        }

        private async Task HearAsync(SslStream secured)
        {
            var message = new byte[4096];
            var length = await secured.ReadAsync(message, _closing.Token);
            if (length > 0)
            {
                Heard.Enqueue(Encoding.UTF8.GetString(message, 0, length));
            }
        }
    }
}
