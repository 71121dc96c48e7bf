using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Keep them quiet: where nothing is wrong, no rule warns.</summary>
[Trait("Speed", "slow")]
public sealed class QuietPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property A_show_wired_by_hand_gives_nothing_above_a_note() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => clean.Show,
            clean =>
            {
                var check = Promise.Engine.Check(clean.Show);
                return check.Findings.FirstOrDefault(finding => finding.Severity > Severity.Note) is { } loud ? $"{loud.Rule} {loud.Message}"
                    : check.Undecided.IsEmpty ? null
                    : $"{check.Undecided[0].Rule}: {check.Undecided[0].Reason}";
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property An_assigned_show_that_can_be_wired_by_hand_gives_nothing_above_a_note() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => clean.Show,
            clean =>
            {
                var result = AssignCases.Assign(
                    clean.Show with
                    {
                        Patch = clean.Show.Patch with { Streams = [], Routes = [], Labels = [], Inputs = [] },
                    },
                    AssignCases.Small
                );
                return result.Check.Findings.FirstOrDefault(finding => finding.Severity > Severity.Note && finding.Rule[2] < '6') is { } loud
                    ? $"{loud.Rule} {loud.Message}"
                    : null;
            }
        );
}
