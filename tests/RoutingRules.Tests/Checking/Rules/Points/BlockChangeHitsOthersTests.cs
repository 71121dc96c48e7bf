using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class BlockChangeHitsOthersTests
{
    private static readonly BlockChangeHitsOthers Rule = new();

    /// <summary>Two boxes take one block; aux 5 was put on its second slot for box a.</summary>
    private static Show Shared(FeedRole role, DeviceProfile second)
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", second))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"));
        return show with
        {
            Feeds = [Feed("both", FeedRole.Fill, "desk/aux/1", "a/out/1", "b/out/1"), Feed("late", role, "desk/aux/5", "a/out/2")],
            Patch = show.Patch with { Routes = [Route("desk/aux/5", "desk/transmit/2"), Route(null, "desk/transmit/3-4"), Route(null, "desk/out/1-2")] },
        };
    }

    [Theory]
    [InlineData("monitor", Severity.Warning)]
    [InlineData("main", Severity.Error)]
    [InlineData("in-ear", Severity.Error)]
    public void A_slot_for_one_box_that_sounds_at_the_other_is_told_once(string role, Severity severity)
    {
        var show = Shared(new FeedRole(role), SmallProfiles.Box);

        Expect.One(
            Rule,
            show,
            severity,
            "/patch/routes/0",
            "desk/aux/5 is in block desk/transmit/1-4 for a/out/2, but b/out/2 takes the same block and plays it too, where no feed wants it.",
            "output=b/out/2",
            "source=desk/aux/5"
        );
        Expect.None(new OutputStray(), show);
    }

    [Fact]
    public void An_output_that_can_be_cleared_is_a_stray_like_any_other()
    {
        var show = Shared(FeedRole.Monitor, SmallProfiles.ClearableBox);

        Expect.None(Rule, show);
        Assert.Single(RuleTester.Findings(new OutputStray(), show));
    }

    [Fact]
    public void A_slot_that_both_boxes_want_is_fine()
    {
        var show = Shared(FeedRole.Monitor, SmallProfiles.Box);
        Expect.None(Rule, show with { Feeds = [show.Feeds[0], Feed("late", FeedRole.Monitor, "desk/aux/5", "a/out/2", "b/out/2")] });
    }
}
