using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Resilience;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Resilience;

public sealed class PowerSharedTests
{
    private static readonly PowerShared Rule = new();

    /// <summary>Left at box a, right at box b, with their supplies; the desk has its own.</summary>
    private static Show Powered(string[] a, string[] b)
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"));
        var supplies = new[] { ["ups"], a, b };
        return show with
        {
            Rig = show.Rig with
            {
                Devices = show
                    .Rig.Devices.Select((device, i) => device with { Power = supplies[i].Select(name => new Id<PowerSource>(name)).ToValueList() })
                    .ToValueList(),
            },
            Feeds =
            [
                Feed("left", FeedRole.Main, "desk/aux/1", "a/out/1") with
                {
                    Set = "main",
                },
                Feed("right", FeedRole.Main, "desk/aux/2", "b/out/2") with
                {
                    Set = "main",
                },
            ],
        };
    }

    [Fact]
    public void A_set_on_two_boxes_of_one_supply_is_told()
    {
        Expect.None(Rule, Powered(["distro-1"], ["distro-2"]));
        Expect.One(
            Rule,
            Powered(["distro-1"], ["distro-1"]),
            Severity.Warning,
            "/feeds/0",
            "Set 'main' hangs on supply 'distro-1': a and b have no other.",
            "supply=distro-1",
            "set=main"
        );
    }

    [Fact]
    public void A_second_supply_at_either_box_and_a_supply_that_nobody_stated_lift_it()
    {
        Expect.None(Rule, Powered(["distro-1", "distro-2"], ["distro-1"]));
        Expect.None(Rule, Powered(["distro-1"], []));
    }

    [Fact]
    public void A_rig_with_one_supply_has_no_choice()
    {
        var show = Powered(["ups"], ["ups"]);

        Expect.None(Rule, show);
    }

    [Fact]
    public void What_ends_on_one_device_is_left_to_the_rule_about_single_devices()
    {
        var show = Powered(["distro-1"], ["distro-2"]);

        Expect.None(Rule, show with { Feeds = [show.Feeds[0], Feed("right", FeedRole.Main, "desk/aux/2", "a/out/2") with { Set = "main" }] });
    }

    [Fact]
    public void In_ear_feeds_count_together() =>
        Assert.Equal(
            "All in-ear feeds hang on supply 'distro-1': a and b have no other.",
            Assert
                .Single(
                    RuleTester.Findings(
                        Rule,
                        Powered(["distro-1"], ["distro-1"]) with
                        {
                            Feeds = [Feed("e1", FeedRole.InEar, "desk/aux/1", "a/out/1"), Feed("e2", FeedRole.InEar, "desk/aux/2", "b/out/2")],
                        }
                    )
                )
                .Message
        );

    [Fact]
    public void A_backup_on_the_supply_of_its_feed_is_told_once()
    {
        static Show Backed(Show show) =>
            show with
            {
                Feeds =
                [
                    Feed("voice", FeedRole.Broadcast, "desk/aux/1", "a/out/1"),
                    Feed("voice-2", FeedRole.Broadcast, "desk/aux/2", "b/out/2") with
                    {
                        BackupOf = new("voice"),
                    },
                ],
            };

        Expect.None(Rule, Backed(Powered(["distro-1"], ["distro-2"])));

        // The rule about backups tells it wherever both have a place that belongs together.
        Expect.None(Rule, Backed(Powered(["distro-1"], ["distro-1"])));
        Assert.Equal(
            "'voice-2' backs up 'voice', but both hang on supply 'distro-1'.",
            Assert.Single(RuleTester.Findings(new BackupShares(), Backed(Powered(["distro-1"], ["distro-1"])))).Message
        );

        // The first place of the backup is not served, and its second has none of the feed beside it.
        static Show Apart(Show show) =>
            Backed(show) with
            {
                Feeds = [Backed(show).Feeds[0], Backed(show).Feeds[1] with { To = [new() { At = At("b/out/7") }, new() { At = At("b/out/2") }] }],
            };
        Expect.None(new BackupShares(), Apart(Powered(["distro-1"], ["distro-1"])));
        Expect.One(
            Rule,
            Apart(Powered(["distro-1"], ["distro-1"])),
            Severity.Warning,
            "/feeds/1/backupOf",
            "Feed 'voice-2' backs up 'voice', but both hang on supply 'distro-1': a and b have no other.",
            "supply=distro-1",
            "feed=voice",
            "backup=voice-2"
        );
    }

    [Fact]
    public void Order_does_not_change_the_identity()
    {
        var show = Powered(["distro-1"], ["distro-1"]);

        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, show.Reversed()));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    // The left half stands at both boxes, the right one gets no signal: one feed at two places is no set.
    [Fact]
    public void A_set_of_which_one_half_arrives_hangs_on_nothing_together()
    {
        var show = Powered(["distro-1"], ["distro-1"]).With(Route("desk/aux/1", "desk/transmit/1"), Route(null, "desk/transmit/2"));

        Expect.None(Rule, show with { Feeds = [Feed("left", FeedRole.Main, "desk/aux/1", "a/out/1", "b/out/1") with { Set = "main" }, show.Feeds[1]] });
    }
}
