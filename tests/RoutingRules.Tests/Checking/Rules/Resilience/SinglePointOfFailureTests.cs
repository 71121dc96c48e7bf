using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Resilience;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Resilience;

public sealed class SinglePointOfFailureTests
{
    private static readonly SinglePointOfFailure Rule = new();

    private static readonly Link[] Star = [Link("l1", "desk/net/1", "sw/net/1"), Link("l2", "sw/net/2", "a/net/1"), Link("l3", "sw/net/3", "b/net/1")];

    private static Feed Half(string part, int bus, params string[] devices) =>
        new()
        {
            Id = new(part),
            Role = FeedRole.Main,
            Set = "main",
            Part = part,
            Source = At($"desk/main/{bus}"),
            To = [new() { Devices = devices.Select(device => new Id<Device>(device)).ToValueList() }],
        };

    /// <summary>Left and right at box a; box b stands idle on the same switch.</summary>
    private static Show BothAtA(params string[] allowed) =>
        Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box), ("sw", Switch))
            .With(Star)
            .With(Route("desk/main/1-2", "desk/transmit/1-2"))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4")) with
        {
            Feeds = [Half("left", 1, allowed), Half("right", 2, allowed)],
        };

    [Fact]
    public void A_box_with_the_whole_set_beside_an_idle_box_is_a_warning() =>
        Expect.One(
            Rule,
            BothAtA("a", "b"),
            Severity.Warning,
            "/rig/devices/1",
            "If a fails, this falls silent: set 'main' ('left' and 'right'). 'left' could leave from b/out/1, which is free.",
            "device=a",
            "set=main"
        );

    [Fact]
    public void Mixes_that_end_in_ears_are_in_ear_feeds_whatever_their_role_says()
    {
        var both = BothAtA("a", "b");
        var show = both with { Feeds = both.Feeds.Select(feed => feed with { Set = null, Part = null, Role = FeedRole.Monitor }).ToValueList() };
        var worn = SmallProfiles.Box with
        {
            PortGroups = SmallProfiles.Box.PortGroups.Select(group => group.Id.Value == "out" ? group with { InEar = true } : group).ToValueList(),
        };

        Expect.None(Rule, show);
        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with { Profiles = show.Rig.Profiles.Select(profile => profile.Id == worn.Id ? worn : profile).ToValueList() },
            },
            Severity.Warning,
            "/rig/devices/1",
            "If a fails, this falls silent: all in-ear feeds ('left' and 'right'). 'left' could leave from b/out/1, which is free.",
            "device=a",
            "role=in-ear"
        );
    }

    [Theory]
    [InlineData("amp", true)]
    [InlineData("amp-2", false)]
    public void All_cables_of_an_output_count_for_what_plays_it(string second, bool isTold)
    {
        var show = BothAtA("a");
        show = show with
        {
            Rig = show.Rig with
            {
                Profiles = [.. show.Rig.Profiles, SmallProfiles.Amplifier],
                Devices =
                [
                    .. show.Rig.Devices,
                    new() { Id = new("amp"), Profile = SmallProfiles.Amplifier.Id },
                    new() { Id = new("amp-2"), Profile = SmallProfiles.Amplifier.Id },
                ],
                Cables = [Cable("a/out/1-2", "amp/in/1-2"), Cable("a/out/1-2", $"{second}/in/3-4")],
            },
        };
        var turned = show with { Rig = show.Rig with { Cables = [show.Rig.Cables[1], show.Rig.Cables[0]] } };

        Assert.All([show, turned], one => Assert.Equal(isTold, Set(Rule, one, "listUnavoidable", 1).Any(finding => finding.Entities[0].Id == "amp")));
    }

    [Fact]
    public void An_output_into_somebodys_ears_is_no_way_out_for_a_main()
    {
        var worn = SmallProfiles.Box with
        {
            Id = new("test/worn"),
            PortGroups = SmallProfiles.Box.PortGroups.Select(group => group.Id.Value == "out" ? group with { InEar = true } : group).ToValueList(),
        };
        var show = BothAtA("a", "b");

        Expect.None(
            Rule,
            show with
            {
                Rig = show.Rig with
                {
                    Profiles = [.. show.Rig.Profiles, worn],
                    Devices = show.Rig.Devices.Select(device => device.Id.Value == "b" ? device with { Profile = worn.Id } : device).ToValueList(),
                },
            }
        );
    }

    [Fact]
    public void What_the_rig_cannot_avoid_is_left_out_unless_asked_for()
    {
        Expect.None(Rule, BothAtA("a"));
        Assert.Equal(
            ["desk Note", "a Note", "sw Note", "l1 Note", "l2 Note"],
            Set(Rule, BothAtA("a"), "listUnavoidable", 1)
                .OrderBy(finding => finding.Pointer, StringComparer.Ordinal)
                .Select(finding => $"{finding.Entities[0].Id} {finding.Severity}")
        );
    }

    [Fact]
    public void An_idle_box_that_is_full_dead_or_behind_the_same_box_is_no_way_out()
    {
        var show = BothAtA("a", "b");
        var dead = show with
        {
            Rig = show.Rig with
            {
                Unavailable = [new() { At = At("b/out/1-4"), Reason = "dark" }],
                Reserved = [new() { At = At("b/out/5-8"), Reason = "guest" }],
            },
        };

        Expect.None(Rule, dead);
        Expect.None(Rule, show.With(Star[0], Star[1], Link("l3", "a/net/2", "b/net/1")));
    }

    [Fact]
    public void A_set_on_two_boxes_stands_the_loss_of_either()
    {
        var show = BothAtA("a", "b");

        Expect.None(
            Rule,
            show.With(show.Patch.Streams[0] with { To = [new() { At = At("a/receive/1-4") }, new() { At = At("b/receive/1-4") }] }) with
            {
                Feeds = [Half("left", 1) with { To = [new() { At = At("a/out/1") }] }, Half("right", 2) with { To = [new() { At = At("b/out/2") }] }],
            }
        );
    }

    [Fact]
    public void In_ear_feeds_count_together_and_a_feed_that_arrives_twice_survives()
    {
        var show = BothAtA("a", "b").With(Route("desk/aux/1-2", "desk/transmit/1-2"));
        var ears = new[] { FeedTo("e1", FeedRole.InEar, "desk/aux/1", "a"), FeedTo("e2", FeedRole.InEar, "desk/aux/2", "a") };
        var free = new Destination { Devices = [new("a"), new("b")] };

        Expect.None(Rule, show with { Feeds = [.. ears] });
        Assert.Equal(
            "If a fails, this falls silent: all in-ear feeds ('e1' and 'e2'). 'e2' could leave from b/out/1, which is free.",
            Assert.Single(RuleTester.Findings(Rule, show with { Feeds = [ears[0], ears[1] with { To = [free] }] })).Message
        );
        Expect.None(
            Rule,
            show.With(show.Patch.Streams[0] with { To = [new() { At = At("a/receive/1-4") }, new() { At = At("b/receive/1-4") }] }) with
            {
                Feeds = [ears[0], ears[1] with { To = [ears[1].To[0], new() { Devices = [new("b")] }] }],
            }
        );
    }

    [Fact]
    public void A_ring_stands_the_loss_of_any_link()
    {
        var show = BothAtA("a");
        var ring = show.With([.. Star, Link("l4", "a/net/2", "b/net/2"), Link("l5", "desk/net/2", "sw/net/4")]);

        Assert.Equal(
            ["desk", "a", "sw"],
            Set(Rule, ring, "listUnavoidable", 1).OrderBy(finding => finding.Pointer, StringComparer.Ordinal).Select(finding => finding.Entities[0].Id)
        );
    }

    [Fact]
    public void A_console_is_a_note_when_it_alone_carries_mains_and_ears_beside_another()
    {
        var show = BothAtA("a").With(Route("desk/main/1-2", "desk/transmit/1-2"), Route("desk/aux/3-4", "desk/transmit/3-4"));
        var loaded = show with { Feeds = [.. show.Feeds, FeedTo("e1", FeedRole.InEar, "desk/aux/3", "a"), FeedTo("e2", FeedRole.InEar, "desk/aux/4", "a")] };

        Expect.None(Rule, loaded);
        var two = loaded with { Rig = loaded.Rig with { Devices = [.. loaded.Rig.Devices, new() { Id = new("desk-2"), Profile = SmallProfiles.Console.Id }] } };
        Expect.One(
            Rule,
            two,
            Severity.Note,
            "/rig/devices/0",
            "If desk fails, this falls silent: set 'main' ('left' and 'right') and all in-ear feeds ('e1' and 'e2'). desk-2 is another console.",
            "device=desk",
            "set=main",
            "role=in-ear"
        );
        Expect.None(Rule, two with { Feeds = show.Feeds });
    }

    [Fact]
    public void What_plays_the_outputs_counts_too()
    {
        var show = BothAtA("a", "b");
        var amped = show with
        {
            Rig = show.Rig with
            {
                Devices = [.. show.Rig.Devices, new() { Id = new("amp"), Profile = SmallProfiles.Amplifier.Id }],
                Profiles = [.. show.Rig.Profiles, SmallProfiles.Amplifier],
                Cables = [Cable("a/out/1-2", "amp/in/1-2"), Cable("b/out/1-8", "amp/in/1-8")],
            },
            Feeds = [Half("left", 1, "a"), Half("right", 2, "a")],
        };

        Assert.Contains("amp", Set(Rule, amped, "listUnavoidable", 1).Select(finding => finding.Entities[0].Id));
    }

    [Fact]
    public void Feeds_that_do_not_arrive_are_told_elsewhere()
    {
        var show = BothAtA("a", "b");

        Expect.None(Rule, show with { Patch = new() });
    }

    [Fact]
    public void A_switch_that_silences_what_a_box_silences_is_not_told_beside_it_in_whatever_order_they_are_listed()
    {
        // Box b is joined to the desk past the switch, so that moving a feed there saves it from both losses.
        var show = BothAtA("a", "b").With(Star[0], Star[1], Link("l3", "desk/net/2", "b/net/1"));

        Assert.Equal(["a"], RuleTester.Findings(Rule, show).Select(finding => finding.Entities[0].Id));
        Assert.Equal(["a"], RuleTester.Findings(Rule, show.Reversed()).Select(finding => finding.Entities[0].Id));
    }

    [Fact]
    public void Order_does_not_change_the_identity() =>
        Assert.Equal(Expect.Fingerprints(Rule, BothAtA("a", "b")), Expect.Fingerprints(Rule, BothAtA("a", "b").Reversed()));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    // The right half gets no signal: what takes the left one away takes nothing else, so that nothing is lost together.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_set_of_which_one_half_arrives_is_not_lost_together(double listUnavoidable)
    {
        var show = BothAtA("a", "b").With(Route("desk/main/1", "desk/transmit/1"), Route(null, "desk/transmit/2"));

        Assert.Empty(Set(Rule, show, "listUnavoidable", listUnavoidable));
        Assert.Empty(
            Set(Rule, show with { Feeds = show.Feeds.Select(feed => feed with { Set = null, Part = null }).ToValueList() }, "listUnavoidable", listUnavoidable)
        );
    }
}
