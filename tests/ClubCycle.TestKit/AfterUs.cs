using System.Diagnostics;

namespace ClubCycle.TestKit;

/// <summary>
/// A shell command that runs when this program was ended, even killed, before it could clean up. A shell waits at a pipe that nobody else holds: a word says that all
/// is cleaned up, the pipe's end alone that it is not.
/// </summary>
public sealed class AfterUs : IDisposable
{
    private readonly Process _shell;

    private AfterUs(Process shell) => _shell = shell;

    /// <param name="script">Takes its values as $1, $2 and so on.</param>
    public static AfterUs Run(string script, params IReadOnlyList<string> values)
    {
        // A session of its own, so that what ends the terminal's programs does not end this one first.
        ProcessStartInfo start = new("setsid", ["sh", "-c", $"read -r over && exit; {script}", "after", .. values]) { RedirectStandardInput = true };
        return new AfterUs(Process.Start(start)!);
    }

    /// <summary>A private PostgreSQL: stops it and removes its folder.</summary>
    public static AfterUs EndServer(string folder) => Run(
        """
        cluster=$1/postgres/cluster
        pid=$(head -n 1 "$cluster/postmaster.pid" 2>/dev/null)
        if [ -n "$pid" ] && [ "/proc/$pid/cwd" -ef "$cluster" ]; then
          kill -INT "$pid"
          while kill -0 "$pid" 2>/dev/null; do sleep 0.2; done
        fi
        rm -rf "$1"
        """,
        folder);

    public static AfterUs EndProgram(int id) => Run("kill \"$1\"", id.ToString(System.Globalization.CultureInfo.InvariantCulture));

    public void Dispose()
    {
        _shell.StandardInput.WriteLine("over");
        _shell.StandardInput.Close();
        _shell.WaitForExit();
        _shell.Dispose();
    }
}
