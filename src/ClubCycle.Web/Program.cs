using ClubCycle.Web.Commands;

#pragma warning disable RS0030 // The one place that names the real clock.
var clock = NodaTime.SystemClock.Instance;
#pragma warning restore RS0030

return args switch
{
    ["plan", .. var rest] => await PlanCommand.RunAsync(rest, Console.OpenStandardInput(), Console.Out, Console.Error),
    ["migrate", .. var rest] => await MigrateCommand.RunAsync(rest, Console.Out, Console.Error),
    ["reset-password", .. var rest] => await ResetPasswordCommand.RunAsync(rest, clock, Console.Out, Console.Error),
    ["backup", .. var rest] => await BackupCommand.RunAsync(rest, clock, Console.Out, Console.Error),
    ["restore", .. var rest] => await RestoreCommand.RunAsync(rest, clock, Console.Out, Console.Error),
    ["health", .. var rest] => await HealthCommand.RunAsync(rest, Console.Out, Console.Error),
    ["serve", .. var rest] => await ServeCommand.RunAsync(rest, clock, Console.Out, Console.Error),
    ["help" or "--help" or "-h", ..] => Usage.Print(Console.Out),
    [var word, ..] when !word.StartsWith('-') => Usage.Unknown(word, Console.Error),
    _ => await ServeCommand.RunAsync(args, clock, Console.Out, Console.Error),
};

/// <summary>Named so that tests can start the whole application.</summary>
public sealed partial class Program;
