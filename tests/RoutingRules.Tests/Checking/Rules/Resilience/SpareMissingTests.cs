using RoutingRules.Checking.Rules.Resilience;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Hearing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Resilience;

public sealed class SpareMissingTests
{
    private static readonly SpareMissing Rule = new();

    /// <summary>A box whose 8 outputs carry as many feeds as said, from the first on.</summary>
    private static Show Full(int feeds, FeedRole role, Func<int, Destination>? to = null) =>
        Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .With(Route("desk/aux/1-8", "desk/transmit/1-8"))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"), Stream("t", "desk/transmit/5-8", "a/receive/5-8")) with
        {
            Feeds =
            [
                .. Enumerable
                    .Range(1, feeds)
                    .Select(number =>
                        Feed($"f{number}", number == 1 ? role : FeedRole.Monitor, $"desk/aux/{number}") with
                        {
                            To = [to?.Invoke(number) ?? new Destination { At = At($"a/out/{number}") }],
                        }
                    ),
            ],
        };

    [Fact]
    public void A_main_on_a_full_box_is_a_note()
    {
        Expect.None(Rule, Full(7, FeedRole.Main));
        Expect.One(
            Rule,
            Full(8, FeedRole.Main),
            Severity.Note,
            "/rig/devices/1",
            "Nothing is free at a that could take over from 'f1' at a/out/1.",
            "device=a",
            "output=a/out/1"
        );
    }

    /// <summary>A full box, or one with its last output free, and a rack cabled to one of its outputs.</summary>
    private static Show Racked(int feeds, FeedRole role, string cabled)
    {
        var show = Full(feeds, role);
        return show with
        {
            Rig = show.Rig with
            {
                Profiles = [.. show.Rig.Profiles, EarRig.Rack],
                Devices = [.. show.Rig.Devices, new() { Id = new("rack"), Profile = EarRig.Rack.Id }],
                Cables = [Cable(cabled, "rack/in/1")],
            },
        };
    }

    [Fact]
    public void A_mix_that_ends_in_ears_is_in_ear_whatever_its_role_says()
    {
        Expect.None(Rule, Racked(7, FeedRole.Monitor, "a/out/1"));
        Expect.One(
            Rule,
            Racked(8, FeedRole.Monitor, "a/out/1"),
            Severity.Note,
            "/rig/devices/1",
            "Nothing is free at a that could take over from 'f1' at a/out/1.",
            "device=a",
            "output=a/out/1"
        );
    }

    [Fact]
    public void An_output_into_somebodys_ears_is_no_spare_for_a_main()
    {
        Expect.None(Rule, Racked(7, FeedRole.InEar, "a/out/8"));
        Expect.One(
            Rule,
            Racked(7, FeedRole.Main, "a/out/8"),
            Severity.Note,
            "/rig/devices/1",
            "Nothing is free at a that could take over from 'f1' at a/out/1.",
            "device=a",
            "output=a/out/1"
        );
    }

    [Fact]
    public void A_full_box_without_mains_and_in_ear_feeds_is_nothing_to_say() => Expect.None(Rule, Full(8, FeedRole.Monitor));

    [Fact]
    public void A_free_output_on_another_box_that_the_feed_may_use_is_a_spare() =>
        Expect.None(Rule, Full(8, FeedRole.Main, number => number == 1 ? new() { Devices = [new("a"), new("b")] } : new() { At = At($"a/out/{number}") }));

    [Fact]
    public void Dead_and_reserved_outputs_are_no_spares()
    {
        var show = Full(6, FeedRole.InEar);

        Assert.Single(
            RuleTester.Findings(
                Rule,
                show with
                {
                    Rig = show.Rig with
                    {
                        Unavailable = [new() { At = At("a/out/7"), Reason = "dark" }],
                        Reserved = [new() { At = At("a/out/8"), Reason = "guest" }],
                    },
                }
            )
        );
    }

    [Fact]
    public void A_pair_wants_two_side_by_side_that_start_on_an_odd_number()
    {
        static Show With(int monitors)
        {
            var show = Full(monitors, FeedRole.Monitor, number => new() { At = At($"a/out/{number + 2}") });
            return show.With(Route("desk/main/1-2", "desk/transmit/1-2"), Route("desk/aux/1-6", "desk/transmit/3-8")) with
            {
                Feeds = [.. show.Feeds, Feed("ears", FeedRole.InEar, "desk/main/1-2", "a/out/1-2")],
            };
        }

        Expect.None(Rule, With(4));
        Assert.Equal("Nothing is free at a that could take over from 'ears' at a/out/1-2.", Assert.Single(RuleTester.Findings(Rule, With(5))).Message);
    }

    [Fact]
    public void A_feed_that_ends_at_a_channel_or_nowhere_needs_no_output()
    {
        Expect.None(Rule, Full(8, FeedRole.Main) with { Patch = new() });
        Expect.None(Rule, Full(8, FeedRole.Monitor) with { Feeds = [Feed("f", FeedRole.Main, "desk/aux/1", "desk/channel/1")] });
    }

    [Fact]
    public void Order_does_not_change_the_identity() =>
        Assert.Equal(Expect.Fingerprints(Rule, Full(8, FeedRole.Main)), Expect.Fingerprints(Rule, Full(8, FeedRole.Main).Reversed()));
}
