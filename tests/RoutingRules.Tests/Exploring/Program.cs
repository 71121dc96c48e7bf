using System.Diagnostics;
using System.Globalization;
using RoutingRules.Tests.Diagnosis;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Exploring;

/// <summary>Looks for shows that break a promise, for as long as one likes, and prints a line that brings each one back.</summary>
internal static class Program
{
    private const string Usage = "explore MINUTESm [FIRST-SEED [NAME…]]   or   explore NAME SEED [FILE]   or   faults EACH [SEED]";

    public static int Main(string[] args)
    {
        var whole = CultureInfo.InvariantCulture;
        if (args is ["faults", var each, ..] && int.TryParse(each, NumberStyles.None, whole, out var count))
            return Faults(count, args.Length > 2 && int.TryParse(args[2], NumberStyles.None, whole, out var from) ? from : 1);

        if (args is not ["explore", var what, ..])
            return Fail(Usage);

        if (what.EndsWith('m') && double.TryParse(what[..^1], NumberStyles.Float, whole, out var minutes))
        {
            var seed = Random.Shared.Next(1_000_000_000);
            if (args.Length > 2 && !int.TryParse(args[2], NumberStyles.None, whole, out seed))
                return Fail(Usage);

            var named = args.Skip(3).Select(Find).ToList();
            return named.Contains(null) ? Fail(Names()) : Explore(TimeSpan.FromMinutes(minutes), seed, named.Count == 0 ? Experiments.All : named!);
        }

        if (args.Length is not (3 or 4) || !int.TryParse(args[2], NumberStyles.None, whole, out var again))
            return Fail(Usage);

        if (Find(what) is not { } experiment)
            return Fail(Names());

        if (args.Length == 4)
        {
            var made = experiment.Make(again);
            File.WriteAllText(args[3], AssignCases.Json(made.Show));
            Console.WriteLine(made.Options);
        }

        return Print(experiment, again, experiment.Try(again));
    }

    /// <summary>Plants faults and prints which are not told as one cause and mended, then the table by kind.</summary>
    private static int Faults(int each, int seed)
    {
        var shows = CleanShows.All(60, seed);
        Console.WriteLine($"{shows.Count} clean shows");
        foreach (var isPinned in new[] { true, false })
        {
            var some = shows.FindAll(show => show.Title.EndsWith("pinned", StringComparison.Ordinal) == isPinned);
            Console.WriteLine($"{some.Count} clean shows, {(isPinned ? "pinned" : "as they are")}");
            Console.WriteLine(FaultTable.Single(some, seed, each, Console.WriteLine));
            Console.WriteLine(FaultTable.Double(some, seed, each * 8, Console.WriteLine));
        }

        return 0;
    }

    private static int Explore(TimeSpan time, int first, IReadOnlyList<Experiment> experiments)
    {
        Console.WriteLine($"from seed {first}, {time.TotalMinutes} minutes: {string.Join(", ", experiments.Select(experiment => experiment.Name))}");
        var watch = Stopwatch.StartNew();
        var (cases, broken) = (0, 0);
        for (var seed = first; watch.Elapsed < time; seed++)
        {
            foreach (var experiment in experiments)
            {
                cases++;
                broken += Print(experiment, seed, experiment.Try(seed));
            }
        }

        Console.WriteLine($"{cases} cases, {broken} broken");
        return broken == 0 ? 0 : 1;
    }

    private static int Print(Experiment experiment, int seed, IReadOnlyList<string> wrong)
    {
        foreach (var problem in wrong)
            Console.WriteLine($"explore {experiment.Name} {seed}: {problem}");

        return wrong.Count == 0 ? 0 : 1;
    }

    private static Experiment? Find(string name) => Experiments.All.FirstOrDefault(experiment => experiment.Name == name);

    private static string Names() => $"The experiments are {string.Join(", ", Experiments.All.Select(experiment => experiment.Name))}.";

    private static int Fail(string text)
    {
        Console.Error.WriteLine(text);
        return 2;
    }
}
