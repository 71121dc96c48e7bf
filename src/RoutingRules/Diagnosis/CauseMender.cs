using System.Globalization;
using RoutingRules.Checking;
using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Diagnosis;

/// <summary>Makes the repair of one cause.</summary>
internal static class CauseMender
{
    /// <exception cref="ArgumentException">There is no such cause, or nothing to apply.</exception>
    public static FixResult Run(Checker checker, IReadOnlyList<FixProvider> providers, Show show, int number, CancellationToken cancellation)
    {
        var resolved = checker.Resolve(show);
        var before = new FixState(resolved, checker.Check(resolved, cancellation));
        var causes = Diagnostician.Run(checker, providers, resolved, before.Check, cancellation).Causes;
        if (number < 1 || number > causes.Count)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"there is no cause {number}; check names {(causes.Count == 0 ? "none" : causes.Count == 1 ? "one" : $"{causes.Count}")}."
                )
            );
        }

        var cause = causes[number - 1];
        if (cause.Repair.Edits.IsEmpty)
        {
            throw new ArgumentException($"the repair of this cause needs a person: {string.Join("; ", cause.Repair.Choices)}.");
        }

        var finding = before.Check.Findings.First(found => cause.Findings.Contains(found.Fingerprint()));
        return RepairTrial.Run(checker, before, cause.Repair.Edits, cancellation) is { } trial
            ? new FixResult
            {
                Show = trial.After.Show.Document,
                Before = before.Check,
                After = trial.After.Check,
                Applied =
                [
                    new AppliedFix
                    {
                        Finding = finding,
                        Fix = cause.Repair,
                        Moves = SinkMoves.Between(resolved, trial.After.Show),
                    },
                ],
            }
            : new FixResult
            {
                Show = show,
                Before = before.Check,
                After = before.Check,
                Refused =
                [
                    new RefusedFix
                    {
                        Finding = finding,
                        Title = cause.Repair.Title,
                        Reason = "it only helps once the causes before it are mended",
                    },
                ],
            };
    }
}
