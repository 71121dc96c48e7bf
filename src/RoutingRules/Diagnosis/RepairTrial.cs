using RoutingRules.Checking;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis;

/// <summary>Applies a repair to a copy of a show, traces and checks it, and says what has become of the findings.</summary>
internal sealed class RepairTrial
{
    private RepairTrial(FixState after, List<Finding> gone, int weight)
    {
        After = after;
        Gone = gone;
        Weight = weight;
    }

    public FixState After { get; }

    /// <summary>The findings that are no longer there, in order.</summary>
    public List<Finding> Gone { get; }

    /// <summary>True when nothing graver than a note is left.</summary>
    public bool IsClean => After.Check.Worst is null or Severity.Note;

    /// <summary>How grave all that is still found is.</summary>
    public int Weight { get; }

    /// <summary>Tries edits; null when they do not fit, when nothing grave goes away, or when something graver comes or no longer arrives.</summary>
    public static RepairTrial? Run(Checker checker, FixState before, ValueList<ShowEdit> edits, CancellationToken cancellation)
    {
        var show = before.Show.Document;
        foreach (var edit in edits)
        {
            if (edit.Apply(show) is not { } edited)
            {
                return null;
            }

            show = edited;
        }

        var resolved = checker.Resolve(show);
        var check = checker.Check(resolved, cancellation);
        var still = check.Findings.Select(finding => finding.Fingerprint()).ToHashSet(StringComparer.Ordinal);
        var gone = before.Check.Findings.Where(finding => !still.Contains(finding.Fingerprint())).ToList();
        var weight = WeightOf(check);
        return
            weight < WeightOf(before.Check)
            && gone.Exists(finding => finding.Severity > Severity.Note)
            && !Hurts(before.Check, check)
            && Deliveries.Lost(before.Show, resolved) is null
            ? new RepairTrial(new FixState(resolved, check), gone, weight)
            : null;
    }

    public static int WeightOf(CheckResult check)
    {
        var sum = 0;
        foreach (var finding in check.Findings)
        {
            sum += finding.Severity switch
            {
                Severity.Error => 100,
                Severity.Warning => 10,
                _ => 1,
            };
        }

        return sum + (100 * check.Undecided.Count);
    }

    /// <summary>True when an error about hearing has come.</summary>
    private static bool Hurts(CheckResult before, CheckResult after)
    {
        var known = new KnownFindings(before.Findings);
        foreach (var finding in after.Findings)
        {
            if (finding.Severity == Severity.Error && finding.Rule.StartsWith("RR9", StringComparison.Ordinal) && known.SeverityOf(finding) != Severity.Error)
            {
                return true;
            }
        }

        return false;
    }
}
