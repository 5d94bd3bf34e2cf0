namespace ClubCycle.Data.Embedded;

/// <summary>The command that installs PostgreSQL on this operating system.</summary>
internal static class InstallLine
{
    public static string Here { get; } = (OperatingSystem.IsWindows(), OperatingSystem.IsMacOS()) switch
    {
        (true, _) => "winget install PostgreSQL.PostgreSQL.17",
        (_, true) => "brew install postgresql@17",
        _ when File.Exists("/usr/bin/dnf") => "sudo dnf install -y postgresql-server postgresql-contrib",
        _ when File.Exists("/sbin/apk") => "apk add postgresql17 postgresql17-contrib",
        _ => "sudo apt-get install -y postgresql",
    };
}
