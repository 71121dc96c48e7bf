using System.Diagnostics;
using System.Globalization;

namespace RoutingRules.Benchmarks;

/// <summary>Compares actions by pairs that run right after each other, so that what slows the machine down slows both.</summary>
public static class Ratios
{
    private const int Pairs = 301;
    private const int MaxRounds = 40;
    private const int SteadyRounds = 6;

    /// <summary>The median of how many times as long one action takes as another.</summary>
    public static double Median(Action action, Action baseline)
    {
        Repeats(action);
        var repeats = Repeats(baseline);
        var ratios = new double[Pairs];
        for (var i = 0; i < Pairs; i++)
        {
            // Turn about, so that neither always runs on the warmer cache.
            if (i % 2 == 0)
            {
                var time = Run(action, repeats);
                ratios[i] = time / Run(baseline, repeats);
            }
            else
            {
                var time = Run(baseline, repeats);
                ratios[i] = Run(action, repeats) / time;
            }
        }

        Array.Sort(ratios);
        return ratios[Pairs / 2];
    }

    /// <summary>Bytes allocated by one call after warm-up.</summary>
    public static long Allocated(Action action)
    {
        action();
        action();
        var before = GC.GetAllocatedBytesForCurrentThread();
        action();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    /// <summary>Microseconds of one call, the median of several samples of many calls.</summary>
    public static double Microseconds(Action action)
    {
        const int Samples = 15;
        const int Calls = 200;
        for (var i = 0; i < 1000; i++)
        {
            action();
        }

        var times = new double[Samples];
        for (var i = 0; i < Samples; i++)
        {
            times[i] = Run(action, Calls) / Calls * 1_000_000 / Stopwatch.Frequency;
        }

        Array.Sort(times);
        return times[Samples / 2];
    }

    /// <summary>Begins a table.</summary>
    public static void Header(string title)
    {
        Console.WriteLine();
        Console.WriteLine(title);
    }

    /// <summary>Prints one line of a table.</summary>
    public static void Print(string name, Action action, Action baseline) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name, -60} {Median(action, baseline), 8:F2} x {Allocated(action), 12:N0} bytes"));

    /// <summary>How often to call an action so that one sample lasts about a millisecond, once it no longer gets faster.</summary>
    private static int Repeats(Action action)
    {
        // The compiler works beside the action and improves it in steps; on a busy machine these come late, so that a fixed warm-up would not do.
        var best = 0;
        var steady = 0;
        for (var round = 0; round < MaxRounds && steady < SteadyRounds; round++)
        {
            var calls = CallsIn(Stopwatch.Frequency / 4, action);
            steady = calls > best + (best / 20) ? 0 : steady + 1;
            best = Math.Max(best, calls);
        }

        return Math.Max(1, best / 250);
    }

    private static int CallsIn(long ticks, Action action)
    {
        var until = Stopwatch.GetTimestamp() + ticks;
        var calls = 0;
        while (Stopwatch.GetTimestamp() < until)
        {
            action();
            calls++;
        }

        return calls;
    }

    private static double Run(Action action, int repeats)
    {
        var start = Stopwatch.GetTimestamp();
        for (var i = 0; i < repeats; i++)
        {
            action();
        }

        return Stopwatch.GetTimestamp() - start;
    }
}
