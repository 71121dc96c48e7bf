using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class PairOffParityTests
{
    private static readonly PairOffParity Rule = new();

    private static Show Streamed(Func<PortGroup, PortGroup>? change = null)
    {
        var box = SmallProfiles.Box with
        {
            PortGroups = SmallProfiles
                .Box.PortGroups.Select(group => group.Kind == PortKind.Output && change is not null ? change(group) : group)
                .ToValueList(),
        };
        return Of(("desk", SmallProfiles.Console), ("box", box))
            .With(Route("desk/aux/1-8", "desk/transmit/1-8"))
            .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box/receive/5-8"));
    }

    [Fact]
    public void A_pair_on_two_and_three_gives_one_note() =>
        Expect.One(
            Rule,
            Streamed() with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/2-3", "box/out/2-3") with { Name = "Ears" }],
            },
            Severity.Note,
            "/feeds/0/to/0",
            "The pair 'Ears' starts on an even number, at box/out/2-3.",
            "points=box/out/2-3",
            "feed=ears"
        );

    [Fact]
    public void A_pair_on_one_and_two_gives_none() =>
        Expect.None(Rule, Streamed() with { Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/1-2", "box/out/1-2")] });

    // Two channels on one connector: AES3 (from memory). Paired: what a profile states.
    [Theory]
    [InlineData("connector")]
    [InlineData("level")]
    [InlineData("paired")]
    public void Where_the_hardware_pairs_it_is_a_warning(string how)
    {
        var show = Streamed(group =>
            how switch
            {
                "connector" => group with { ChannelsPerConnector = 2 },
                "level" => group with { Level = SignalLevel.Aes3 },
                _ => group with { Paired = true },
            }
        );

        Expect.One(
            Rule,
            show with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/2-3", "box/out/2-3")],
            },
            Severity.Warning,
            "/feeds/0/to/0",
            "The pair 'ears' starts on an even number, at box/out/2-3, but the device joins odd and even neighbours.",
            "points=box/out/2-3",
            "feed=ears"
        );
    }

    [Fact]
    public void Neighbouring_pairs_displaced_by_one_give_one_finding() =>
        Expect.One(
            Rule,
            Streamed() with
            {
                Feeds =
                [
                    Feed("c", FeedRole.InEar, "desk/aux/6-7", "box/out/6-7"),
                    Feed("a", FeedRole.InEar, "desk/aux/2-3", "box/out/2-3"),
                    Feed("b", FeedRole.InEar, "desk/aux/4-5", "box/out/4-5"),
                ],
            },
            Severity.Note,
            "/feeds/1/to/0",
            "3 pairs start on even numbers, at box/out/2-7: 'a', 'b' and 'c'.",
            "points=box/out/2-7",
            "feed=a",
            "feed=b",
            "feed=c"
        );

    [Fact]
    public void Pairs_apart_give_a_finding_each() =>
        Assert.Equal(
            2,
            Expect
                .Fingerprints(
                    Rule,
                    Streamed() with
                    {
                        Feeds = [Feed("a", FeedRole.InEar, "desk/aux/2-3", "box/out/2-3"), Feed("b", FeedRole.InEar, "desk/aux/6-7", "box/out/6-7")],
                    }
                )
                .Distinct()
                .Count()
        );

    [Fact]
    public void A_pair_that_a_device_serves_on_an_even_number_is_found() =>
        Expect.One(
            Rule,
            Streamed() with
            {
                Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/4-5", "box")],
            },
            Severity.Note,
            "/feeds/0/to/0",
            "The pair 'ears' starts on an even number, at box/out/4-5.",
            "points=box/out/4-5",
            "feed=ears"
        );

    [Fact]
    public void A_pin_counts_before_anything_is_patched() =>
        Expect.One(
            Rule,
            Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/1-2", "box/out/2-3")],
            },
            Severity.Note,
            "/feeds/0/to/0",
            "The pair 'ears' starts on an even number, at box/out/2-3.",
            "points=box/out/2-3",
            "feed=ears"
        );

    [Fact]
    public void A_line_is_judged_by_its_inputs() =>
        Expect.One(
            Rule,
            Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
            {
                Lines = [Line("keys", "box/in/4-5", "desk/channel/1-2")],
            },
            Severity.Note,
            "/lines/0/from",
            "The pair 'keys' starts on an even number, at box/in/4-5.",
            "points=box/in/4-5",
            "line=keys"
        );

    [Fact]
    public void Slots_channels_and_single_feeds_have_no_parity()
    {
        Expect.None(
            Rule,
            Streamed() with
            {
                Feeds = [Feed("x", FeedRole.Record, "desk/aux/2-3", "box/receive/2-3"), Feed("y", FeedRole.Monitor, "desk/aux/4", "box/out/4")],
            }
        );
        Expect.None(Rule, Streamed() with { Lines = [Line("keys", "box/in/1-2", "desk/channel/2-3")] });
    }

    [Property]
    public void Only_even_starts_are_found(byte choice)
    {
        var first = (choice % 7) + 1;
        var show = Streamed() with { Feeds = [Feed("ears", FeedRole.InEar, $"desk/aux/{first}-{first + 1}", $"box/out/{first}-{first + 1}")] };

        Assert.Equal(first is 2 or 4 or 6 ? 1 : 0, RuleTester.Findings(Rule, show).Count);
    }
}
