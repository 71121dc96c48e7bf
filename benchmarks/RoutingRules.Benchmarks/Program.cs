using BenchmarkDotNet.Running;
using RoutingRules.Benchmarks;

// One entry for each table of ratios that "ratios" prints; "ratios NAME" prints one.
var tables = new (string Name, Action Run)[]
{
    ("read", ReadRatios.Run),
    ("check", CheckRatios.Run),
    ("rules", CheckRatios.RunRules),
    ("slope", SlopeTable.Run),
    ("edit", SlopeTable.RunEdit),
    ("impact", ImpactRatios.Run),
};

if (args is not ["ratios", ..])
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
    return;
}

// Takes minutes to hours, so that it runs only when it is asked for.
if (args is [_, "assign", .. var which])
{
    AssignRatios.Run(which);
    return;
}

foreach (var table in tables)
{
    if (args.Length == 1 || args.Contains(table.Name, StringComparer.Ordinal))
    {
        table.Run();
    }
}
