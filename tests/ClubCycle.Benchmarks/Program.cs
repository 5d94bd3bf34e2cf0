using System.Globalization;
using BenchmarkDotNet.Running;
using ClubCycle.Benchmarks;

if (args is ["figures"])
{
    Figures.Print();
    await PublishingFigures.PrintAsync();
    await ServingFigures.PrintAsync();
    await ScreenFigures.PrintAsync();
}
else if (args is ["screens"])
{
    await ScreenFigures.PrintAsync();
}
else if (args is ["serving"])
{
    await ServingFigures.PrintAsync();
}
else if (args is ["backup"])
{
    await BackupFigures.PrintAsync();
}
else if (args is ["million", .. var million])
{
    await MillionFigures.PrintAsync(Number(million, 0, 30));
}
else if (args is ["live", .. var live])
{
    await LiveFigures.PrintAsync(Number(live, 0, 5), Number(live, 1, 500));
}
else if (args is ["flood"])
{
    await FloodFigures.PrintAsync();
}
else if (args is ["bare", var address, var file, var etag, var modified])
{
    await BareServer.RunAsync(address, file, etag, modified);
}
else if (args is ["publishing"])
{
    await PublishingFigures.PrintAsync();
}
else
{
    BenchmarkRunner.Run<SquadYear>(args: args);
}

static int Number(string[] said, int place, int usual) => said.Length > place ? int.Parse(said[place], CultureInfo.InvariantCulture) : usual;
