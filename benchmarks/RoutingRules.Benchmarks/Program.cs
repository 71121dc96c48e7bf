using RoutingRules.Benchmarks;

switch (args)
{
    case ["ratios"]:
        ReadRatios.Run();
        break;
    default:
        BenchmarkDotNet.Running.BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}
