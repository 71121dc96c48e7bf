using System.Diagnostics;
using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Strategies.CpSat;

namespace RoutingRules.Benchmarks;

/// <summary>The default strategy against the quick one and against a constraint solver with 1, 10 and 60 seconds.</summary>
public static class AssignRatios
{
    private static readonly double[] Seconds = [1, 10, 60];

    /// <summary>Prints, for each instance and strategy, the vector, how much of it is proven, the time, and how it compares with the default.</summary>
    /// <param name="args">A shape, a size, and <c>1s</c> for the solver's times or <c>alone</c> for none; what is not named is taken whole.</param>
    public static void Run(IReadOnlyList<string> args)
    {
        var shapes = Enum.GetValues<AssignShape>().Where(shape => args.Contains(shape.ToString(), StringComparer.OrdinalIgnoreCase)).ToArray();
        var sizes = args.Where(arg => int.TryParse(arg, CultureInfo.InvariantCulture, out _))
            .Select(arg => int.Parse(arg, CultureInfo.InvariantCulture))
            .ToArray();
        var usual = args.Contains("alone", StringComparer.Ordinal) ? [] : Seconds;
        var seconds = Seconds.Where(limit => args.Contains(Invariant($"{limit}s"), StringComparer.Ordinal)).ToArray();
        Ratios.Header("Assignment: vector, numbers proven, milliseconds (the check of the result included), against the default");
        Warm();
        foreach (var instance in AssignInstances.All())
        {
            if ((shapes.Length == 0 || shapes.Contains(instance.Shape)) && (sizes.Length == 0 || sizes.Contains(instance.Outputs)))
            {
                Compare(instance, seconds.Length == 0 ? usual : seconds);
            }
        }
    }

    private static void Warm()
    {
        // The compiler and the solver's library are loaded before anything is timed.
        var small = AssignInstances.Create(AssignShape.Festival, 16, 1);
        Measure(small, Engine(1), "exact");
        Measure(small, Engine(1), "greedy");
        Measure(small, Engine(1), "cp-sat");
    }

    private static void Compare(AssignInstance instance, double[] seconds)
    {
        var show = instance.Show;
        Console.WriteLine();
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{instance.Shape} {instance.Outputs} (seed {instance.Seed}): {show.Feeds.Count} feeds, {show.Lines.Count} lines, "
                    + $"{show.Rig.Devices.Count} devices"
            )
        );
        var usual = Measure(instance, Engine(1), "exact");
        Print("default", usual, null);
        Print("greedy", Measure(instance, Engine(1), "greedy"), usual.Result);
        foreach (var limit in seconds)
        {
            try
            {
                Print(Invariant($"cp-sat {limit} s"), Measure(instance, Engine(limit), "cp-sat"), usual.Result);
            }
            catch (UnsupportedAssignmentException fault)
            {
                Console.WriteLine($"  cp-sat      {fault.Message}");
                break;
            }
        }
    }

    private static RoutingEngine Engine(double seconds) => RoutingEngine.CreateBuilder().AddStrategy(new CpSatStrategy(1_000_000, seconds)).Build();

    private static (AssignmentResult Result, double Milliseconds) Measure(AssignInstance instance, RoutingEngine engine, string strategy)
    {
        var clock = Stopwatch.StartNew();
        var result = engine.Assign(instance.Show, instance.Options with { Strategy = strategy });
        return (result, clock.Elapsed.TotalMilliseconds);
    }

    private static void Print(string name, (AssignmentResult Result, double Milliseconds) measured, AssignmentResult? usual)
    {
        var verdict = usual is null ? "" : Verdict(measured.Result, usual);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  {name, -11} {measured.Result.Objective?.ToString() ?? "pins contradict", -52} {measured.Result.ProvenNumbers, 2} proven "
                    + $"{measured.Milliseconds, 9:F0} ms  {verdict}"
            )
        );
    }

    /// <summary>Who is better, and on which number; numbers 7 to 14 are the levels.</summary>
    private static string Verdict(AssignmentResult result, AssignmentResult usual)
    {
        if (result.Objective is null || usual.Objective is null)
        {
            return "not comparable";
        }

        for (var number = 0; number < ObjectiveVector.Length; number++)
        {
            if (number == 6 && FirstFailedInOne(result, usual) is { } demand)
            {
                return $"leaves out others: {demand} decides";
            }

            var (mine, theirs) = (result.Objective.Values[number], usual.Objective.Values[number]);
            if (mine != theirs)
            {
                var name = number < 6 ? Invariant($"number {number + 1}") : ((ObjectiveLevel)(number - 6)).ToString();
                return Invariant($"{(mine < theirs ? "BETTER" : "worse")} at {name}: {mine} against {theirs}");
            }
        }

        return "equal";
    }

    private static string? FirstFailedInOne(AssignmentResult one, AssignmentResult other)
    {
        var here = one.Unplaced.Select(entry => entry.Demand).ToArray();
        var there = other.Unplaced.Select(entry => entry.Demand).ToArray();
        return here.Except(there).Concat(there.Except(here)).Order(StringComparer.Ordinal).FirstOrDefault();
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
