using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Verification;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class ClaimsCheckTests
{
    // Instance 8 on paper: s-old is removed and its two outputs fall silent; wedge stays, tape is pinned.
    private static readonly Scene Kept = Scene.Paper(8);

    private static readonly AssignmentResult Honest = new()
    {
        Show = Kept.Result,
        Status = AssignmentStatus.Feasible,
        ProvenNumbers = 0,
        Objective = new ObjectiveVector { Values = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3, 4, 2] },
        Placements =
        [
            new Placement
            {
                Demand = "wedge/1",
                At = At("box/out/1"),
                IsKept = true,
            },
            new Placement
            {
                Demand = "tape/1",
                At = At("rec-b/receive/1"),
                IsPinned = true,
            },
        ],
        Unplaced = [],
        Moved = [],
        RemovedStreams = [new("s-old")],
        RemovedReceivers = [new RemovedReceiver { Stream = new("s-old"), At = At("box/receive/3-4") }],
        Silenced = [At("box/out/3")[0], At("box/out/4")[0]],
        Check = new CheckResult
        {
            Findings = [],
            Rules = [],
            Undecided = [],
            WasRead = true,
        },
    };

    [Fact]
    public void An_honest_result_passes() => Assert.Equal([], Problems(Honest));

    [Fact]
    public void Numbers_are_counted_again() =>
        Assert.Equal(
            ["The result says its numbers are 0 0 0 0 | 0 0 | 0 0 0 0 0 3 5 2; counted from its patch they are 0 0 0 0 | 0 0 | 0 0 0 0 0 3 4 2."],
            Problems(Honest with { Objective = new ObjectiveVector { Values = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3, 5, 2] } })
        );

    [Fact]
    public void Flags_of_placements_are_checked() =>
        Assert.Equal(
            ["wedge/1 is said to be pinned.", "wedge/1 is said not to stay where it was."],
            Problems(Honest with { Placements = [Honest.Placements[0] with { IsPinned = true, IsKept = false }, Honest.Placements[1]] })
        );

    [Fact]
    public void Lists_are_made_again()
    {
        Assert.Equal(["The result lists as moved demands [wedge/1]; they are []."], Problems(Honest with { Moved = ["wedge/1"] }));
        Assert.Equal(["The result lists as removed streams []; they are [s-old]."], Problems(Honest with { RemovedStreams = [] }));
        Assert.Equal(
            ["The result lists as removed receivers []; they are [RemovedReceiver { Stream = s-old, At = box/receive/3-4 }]."],
            Problems(Honest with { RemovedReceivers = [] })
        );
        Assert.Equal(
            ["The result lists as silenced outputs [box/out/3]; they are [box/out/3, box/out/4]."],
            Problems(Honest with { Silenced = [At("box/out/3")[0]] })
        );
        Assert.Equal(["The result lists as cleared channels [rec/track/1]; they are []."], Problems(Honest with { Cleared = [At("rec/track/1")[0]] }));
    }

    [Fact]
    public void The_status_agrees_with_the_list_of_contradicting_pins() =>
        Assert.Equal(["The status and the list of contradicting pins do not agree."], Problems(Honest with { Status = AssignmentStatus.PinsContradict }));

    [Fact]
    public void A_cleared_channel_is_listed()
    {
        var lines = Scene.Paper(10);
        var result = Honest with
        {
            Show = lines.Result,
            Objective = lines.Verify().Vector,
            Placements = lines.Placements,
            Unplaced = lines.Unplaced,
            RemovedStreams = [],
            RemovedReceivers = [],
            Silenced = [],
            Cleared = [At("desk/channel/1")[0]],
        };

        Assert.Equal([], AssignmentVerifier.Verify(lines.Show, result, lines.Options, _ => null).Problems);
        Assert.Equal(
            ["The result lists as cleared channels []; they are [desk/channel/1]."],
            AssignmentVerifier.Verify(lines.Show, result with { Cleared = [] }, lines.Options, _ => null).Problems
        );
    }

    private static ValueList<string> Problems(AssignmentResult result) => AssignmentVerifier.Verify(Kept.Show, result, Kept.Options, _ => null).Problems;
}
