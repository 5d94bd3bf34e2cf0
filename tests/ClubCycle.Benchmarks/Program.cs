using BenchmarkDotNet.Running;
using ClubCycle.Benchmarks;

if (args is ["figures"])
{
    Figures.Print();
}
else
{
    BenchmarkRunner.Run<SquadYear>(args: args);
}
