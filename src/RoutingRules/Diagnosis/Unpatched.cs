using System.Globalization;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis;

/// <summary>The cause of a show that nobody has patched yet.</summary>
internal static class Unpatched
{
    /// <summary>Fewer things to place than this are mended rather than assigned.</summary>
    private const int Least = 2;

    /// <summary>The cause; null when the patch holds anything but clearings, or when there is little to patch.</summary>
    public static Cause? Of(FixState state)
    {
        var patch = state.Show.Document.Patch;
        if (!patch.Streams.IsEmpty || patch.Routes.Any(route => route.From is not null))
        {
            return null;
        }

        var open = state.Show.Demands.Where(demand => demand.Existing.IsNone).ToList();
        if (open.Count < Least || open.Count * 2 < state.Show.Demands.Count)
        {
            return null;
        }

        var (feeds, lines) = (open.Count(demand => demand.Feed is not null), open.Count(demand => demand.Line is not null));
        var what =
            lines == 0 ? Counted(feeds, "mix", "mixes")
            : feeds == 0 ? Counted(lines, "line", "lines")
            : $"{Counted(feeds, "mix", "mixes")} and {Counted(lines, "line", "lines")}";
        return new Cause
        {
            Title = $"Nothing is patched yet: {what} {(open.Count == 1 ? "has" : "have")} no path",
            Repair = Fix.Manual("Run assign", "Run assign on the show: it gives every mix and every line its path"),
            Findings = state
                .Check.Findings.Where(finding => finding.Rule.StartsWith("RR2", StringComparison.Ordinal) || Delivers(finding))
                .Select(finding => finding.Fingerprint())
                .ToValueList(),
            Confidence = CauseConfidence.Only,
        };
    }

    private static bool Delivers(Finding finding) =>
        finding.Rule.StartsWith("RR3", StringComparison.Ordinal) || finding.Rule.StartsWith("RR6", StringComparison.Ordinal);

    private static string Counted(int count, string one, string several) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : several)}");
}
