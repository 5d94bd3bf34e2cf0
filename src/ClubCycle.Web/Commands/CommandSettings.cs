using ClubCycle.Web.Hosting;

namespace ClubCycle.Web.Commands;

/// <summary>Settings of commands that start no web app, from the places where the app has them.</summary>
internal static class CommandSettings
{
    public static IConfiguration Read(params string[] arguments) =>
        new ConfigurationBuilder().AddJsonFile("appsettings.json", optional: true).AddEnvironmentVariables().AddSecretFiles().AddCommandLine(arguments).Build();
}
