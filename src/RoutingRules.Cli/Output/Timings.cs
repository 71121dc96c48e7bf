using System.Diagnostics;
using System.Globalization;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Output;

/// <summary>Measures how long each rule takes. Times differ from run to run, so they go to standard error and into no report.</summary>
internal sealed class Timings : RuleObserver
{
    private readonly SortedDictionary<string, Entry> entries = new(StringComparer.Ordinal);
    private long start;

    public override void Started(RuleDescriptor rule) => start = Stopwatch.GetTimestamp();

    public override void Ended(RuleOutcome outcome)
    {
        var ticks = Stopwatch.GetTimestamp() - start;
        if (!entries.TryGetValue(outcome.Descriptor.Id, out var entry))
        {
            entries.Add(outcome.Descriptor.Id, entry = new Entry(outcome.Descriptor));
        }

        entry.Subjects += outcome.Subjects;
        entry.WorkUnits += outcome.WorkUnits;
        entry.Ticks += ticks;
    }

    /// <summary>Writes a table, the slowest rule first.</summary>
    public void Write(TextWriter output)
    {
        var total = entries.Values.Sum(entry => entry.Ticks);
        output.Write("rule     subjects   work units           ms  share  name\n");
        foreach (var entry in entries.Values.OrderByDescending(entry => entry.Ticks).ThenBy(entry => entry.Rule.Id, StringComparer.Ordinal))
        {
            Line(output, entry.Rule.Id, entry, total, entry.Rule.Name);
        }

        Line(
            output,
            "all",
            new Entry(null!)
            {
                Subjects = entries.Values.Sum(entry => entry.Subjects),
                WorkUnits = entries.Values.Sum(entry => entry.WorkUnits),
                Ticks = total,
            },
            total,
            ""
        );
    }

    private static void Line(TextWriter output, string id, Entry entry, long total, string name)
    {
        var milliseconds = 1000.0 * entry.Ticks / Stopwatch.Frequency;
        var share = total == 0 ? 0 : 100.0 * entry.Ticks / total;
        output.Write(
            string.Create(CultureInfo.InvariantCulture, $"{id, -8} {entry.Subjects, 8} {entry.WorkUnits, 12} {milliseconds, 12:0.000} {share, 5:0.0}%  {name}")
                .TrimEnd() + "\n"
        );
    }

    private sealed class Entry(RuleDescriptor rule)
    {
        public RuleDescriptor Rule { get; } = rule;

        public long Subjects { get; set; }

        public long WorkUnits { get; set; }

        public long Ticks { get; set; }
    }
}
