using BenchmarkDotNet.Running;
using ClubCycle.Benchmarks;

if (args is ["figures"])
{
    Figures.Print();
    await PublishingFigures.PrintAsync();
}
else if (args is ["publishing"])
{
    await PublishingFigures.PrintAsync();
}
else
{
    BenchmarkRunner.Run<SquadYear>(args: args);
}
