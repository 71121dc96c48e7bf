using System.Diagnostics;
using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Benchmarks;

/// <summary>What it costs to look at every single failure of a rig, against resolving the rig anew for each.</summary>
public static class ImpactRatios
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    /// <summary>Prints the table.</summary>
    public static void Run()
    {
        Ratios.Header(
            "All single failures (devices, links, cables, looms, supplies): milliseconds (median), multiple of resolving once, looks at points, links and ways"
        );
        foreach (var points in new[] { 1_000, 10_000 })
        {
            var show = LargeRigs.Create(points);
            var resolved = Engine.Resolve(show);
            var (losses, work) = ImpactBuilder.Measure(resolved, new ImpactOptions());
            var ratio = Ratios.Median(() => ImpactBuilder.Measure(resolved, new ImpactOptions()), () => Engine.Resolve(show));
            var time = Median(() => ImpactBuilder.Measure(resolved, new ImpactOptions()), 101);
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{resolved.Graph.PointCount, 8} points {losses.Count, 5} losses {time, 9:F2} ms {ratio, 7:F1} times resolving once, anew for "
                        + $"each {losses.Count} times {work, 9} looks"
                )
            );
        }

        var small = LargeRigs.Create(1_000);
        Print("with plans", small, new ImpactOptions { SetSize = 0 });
        Print("with sets up to 2, no plans", small, new ImpactOptions { Recovery = false });
        Print(
            "with pairs, no plans",
            small,
            new ImpactOptions
            {
                Recovery = false,
                SetSize = 0,
                Pairs = true,
            }
        );
    }

    private static void Print(string what, Show show, ImpactOptions options) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {Median(() => Engine.Impact(show, options), 5), 9:F1} ms"));

    private static double Median(Action action, int times)
    {
        action();
        var taken = new double[times];
        for (var i = 0; i < times; i++)
        {
            var start = Stopwatch.GetTimestamp();
            action();
            taken[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(taken);
        return taken[times / 2];
    }
}
