using ClubCycle.Web.Commands;

return args switch
{
    ["plan", .. var rest] => await PlanCommand.RunAsync(rest, Console.OpenStandardInput(), Console.Out, Console.Error),
    ["serve", .. var rest] => await ServeCommand.RunAsync(rest),
    ["help" or "--help" or "-h", ..] => Usage.Print(Console.Out),
    [var word, ..] when !word.StartsWith('-') => Usage.Unknown(word, Console.Error),
    _ => await ServeCommand.RunAsync(args),
};

/// <summary>Named so that tests can start the whole application.</summary>
public sealed partial class Program;
