using BenchmarkDotNet.Running;
using ClubCycle.Benchmarks;

BenchmarkRunner.Run<SquadYear>(args: args);
