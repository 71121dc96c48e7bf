using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class BackupSharesTests
{
    private static readonly BackupShares Rule = new();

    private static Feed Backup(Feed feed) => feed with { BackupOf = new("first") };

    [Fact]
    public void A_backup_on_the_same_box_is_none() =>
        Expect.One(
            Rule,
            WaysRig.Show(Backup, "a/out/2"),
            Severity.Warning,
            "/feeds/1/backupOf",
            "'second' backs up 'first', but both hang on 'a'.",
            "feed=second",
            "backs-up=first"
        );

    [Fact]
    public void A_backup_on_the_same_supply_is_none() =>
        Expect.One(
            Rule,
            WaysRig.Show(Backup, power: "left"),
            Severity.Warning,
            "/feeds/1/backupOf",
            "'second' backs up 'first', but both hang on supply 'left'.",
            "feed=second",
            "backs-up=first"
        );

    [Fact]
    public void A_link_that_cannot_be_avoided_and_a_ring_that_leads_both_ways_are_fine()
    {
        Expect.None(Rule, WaysRig.Show(Backup));
        Expect.None(Rule, WaysRig.Show(Backup, isRing: true));
    }

    [Fact]
    public void A_shared_link_with_a_way_around_is_reported()
    {
        // Two links in parallel from the console to box a: both feeds take the first by name, though each could take the other.
        var show = WaysRig.Show(Backup);
        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with { Links = [.. show.Rig.Links, show.Rig.Links[0] with { Id = new("spare"), From = At("desk/net/2") }] },
            },
            Severity.Warning,
            "/feeds/1/backupOf",
            "'second' backs up 'first', but both hang on link 'one'.",
            "feed=second",
            "backs-up=first"
        );
    }

    [Fact]
    public void What_a_separation_forbids_is_left_to_its_rule() =>
        Expect.None(Rule, WaysRig.Show(feed => Backup(feed) with { SeparateFrom = [new() { Feed = new("first"), By = SeparationBy.Power }] }, power: "left"));

    // The third feed backs up the second one, which is a backup itself, and stands on the box of the first: that is no matter, the box of the second would be.
    [Theory]
    [InlineData("b/out/3", true)]
    [InlineData("a/out/3", false)]
    public void The_backup_of_a_backup_is_judged_by_what_it_backs_up(string at, bool isTold)
    {
        var show = WaysRig.Show(Backup);
        show = show with { Feeds = [.. show.Feeds, Feed("third", FeedRole.Monitor, "desk/aux/3", at) with { BackupOf = new("second") }] };

        Assert.Equal(
            isTold ? ["'third' backs up 'second', but both hang on 'b'."] : [],
            Testing.RuleTester.Findings(Rule, show).Select(finding => finding.Message)
        );
    }
}
