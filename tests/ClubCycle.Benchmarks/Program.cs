using BenchmarkDotNet.Running;
using ClubCycle.Benchmarks;

switch (args)
{
    case ["figures"]:
        Figures.Print();
        break;
    default:
        BenchmarkRunner.Run<SquadYear>(args: args);
        break;
}
