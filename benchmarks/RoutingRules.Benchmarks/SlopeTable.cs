using System.Diagnostics;
using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Rules;

namespace RoutingRules.Benchmarks;

/// <summary>How work and time grow with the size of the rig.</summary>
public static class SlopeTable
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    /// <summary>Prints work, time and their slopes from 1,000 to 100,000 points.</summary>
    public static void Run()
    {
        Ratios.Header("Resolve and every rule against the number of points: work units, milliseconds (median)");
        Show[] shows = [LargeRigs.Create(1_000), LargeRigs.Create(10_000), LargeRigs.Create(100_000)];
        var points = new double[shows.Length];
        var work = new double[shows.Length];
        var times = new double[shows.Length];
        var results = new CheckResult[shows.Length];
        for (var i = 0; i < shows.Length; i++)
        {
            points[i] = Engine.Resolve(shows[i]).Graph.PointCount;
            results[i] = Engine.Check(shows[i]);
            work[i] = results[i].Rules.AsSpan().ToArray().Sum(rule => rule.WorkUnits);
        }

        // The compiler needs the small one many times before its code is what it stays.
        for (var i = 0; i < 2_000; i++)
        {
            Engine.Check(shows[0]);
        }

        for (var i = 0; i < shows.Length; i++)
        {
            times[i] = Median(shows[i], i == shows.Length - 1 ? 15 : 101);
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{points[i], 8:F0} points {results[i].Findings.Count, 5} findings {work[i], 12:F0} units {times[i], 10:F2} ms"
                )
            );
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"slope of work {Slope(points, work):F3}, of time {Slope(points, times):F3}"));
        for (var rule = 0; rule < results[0].Rules.Count; rule++)
        {
            var units = results.Select(result => (double)result.Rules[rule].WorkUnits).ToArray();
            if (units[^1] > 1_000 && units[0] > 0 && Slope(points, units) > 1.05)
            {
                Console.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"  {results[0].Rules[rule].Descriptor.Id} {Slope(points, units):F2}: {string.Join(" ", units)}"
                    )
                );
            }
        }
    }

    /// <summary>Prints what a change of one route costs when the rig of 10,000 points is checked again.</summary>
    public static void RunEdit()
    {
        const int Edits = 300;
        var show = LargeRigs.Create(10_000);
        var times = new double[Edits];
        for (var i = -50; i < Edits; i++)
        {
            // Each time another route loses its place and its source goes nowhere.
            var routes = show.Patch.Routes.ToList();
            routes.RemoveAt((i + 50) * 7 % routes.Count);
            var edited = show with { Patch = show.Patch with { Routes = routes.ToValueList() } };
            var start = Stopwatch.GetTimestamp();
            Engine.Check(edited);
            times[Math.Max(i, 0)] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        Ratios.Header("One edit on 10,000 points, everything checked again");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"p50 {times[Edits / 2]:F2} ms, p99 {times[Edits * 99 / 100]:F2} ms"));
    }

    private static double Median(Show show, int samples)
    {
        var times = new double[samples];
        for (var i = -2; i < samples; i++)
        {
            var start = Stopwatch.GetTimestamp();
            Engine.Check(show);
            times[Math.Max(i, 0)] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[samples / 2];
    }

    /// <summary>Slope of the line of least squares through the logarithms.</summary>
    private static double Slope(double[] x, double[] y)
    {
        var meanX = x.Average(Math.Log);
        var meanY = y.Average(Math.Log);
        var over = 0.0;
        var under = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            over += (Math.Log(x[i]) - meanX) * (Math.Log(y[i]) - meanY);
            under += Math.Pow(Math.Log(x[i]) - meanX, 2);
        }

        return over / under;
    }
}
