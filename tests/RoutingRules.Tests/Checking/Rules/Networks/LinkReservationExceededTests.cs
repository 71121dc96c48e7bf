using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class LinkReservationExceededTests
{
    private static readonly LinkReservationExceeded Rule = new();

    /// <summary>A sender and two receivers in a chain at 100 Mbit/s, with streams of 8 channels: at 48 kHz, 24 bit and 1 ms each takes 9.84 Mbit/s.</summary>
    private static Show Chain(int streams, params string[] receivers)
    {
        var profile = new DeviceProfile
        {
            Id = new("test/wide"),
            Kind = DeviceKind.Recorder,
            Name = "Wide",
            PortGroups =
            [
                SmallProfiles.Group("transmit", PortKind.Transmit, 128),
                SmallProfiles.Group("receive", PortKind.Receive, 128),
                SmallProfiles.Network(2),
            ],
        };
        return Of(("one", profile), ("two", profile), ("three", profile))
            .With(Link("l1", "one/net/1", "two/net/1") with { SpeedMbps = 100 }, Link("l2", "two/net/2", "three/net/1") with { SpeedMbps = 100 })
            .With([
                .. Enumerable
                    .Range(0, streams)
                    .Select(i =>
                        Stream(
                            $"s{i + 1}",
                            $"one/transmit/{(8 * i) + 1}-{(8 * i) + 8}",
                            [.. receivers.Select(to => $"{to}/receive/{(8 * i) + 1}-{(8 * i) + 8}")]
                        )
                    ),
            ]);
    }

    [Fact]
    public void A_link_that_carries_streams_and_states_no_speed_is_not_decided()
    {
        var show = Chain(1, "two", "three");
        var silent = show with { Rig = show.Rig with { Links = show.Rig.Links.Select(link => link with { SpeedMbps = null }).ToValueList() } };

        var result = RuleTester.Run(Rule, silent);
        Assert.Empty(result.Findings);
        Assert.Equal("Links 'l1' and 'l2' carry streams, but no speed is stated: whether they fit is not known.", Assert.Single(result.Undecided).Reason);
        Assert.Empty(RuleTester.Run(Rule, silent with { Patch = new() }).Undecided);
        Assert.Empty(RuleTester.Run(Rule, silent.With(Transport.PointToPoint)).Undecided);
    }

    // 7 x 9.84 = 68.88 Mbit/s, 8 x 9.84 = 78.72; 75 % of 100 are 75.
    [Fact]
    public void Eight_streams_of_eight_are_too_many_for_a_slow_link()
    {
        Expect.None(Rule, Chain(7, "two"));
        Expect.One(
            Rule,
            Chain(8, "two"),
            Severity.Error,
            "/rig/links/0",
            "Link 'l1' carries 78.72 Mbit/s from one to two in 8 streams, but 75 % of its 100 Mbit/s are 75 Mbit/s: "
                + "the biggest are 's1' with 9.84 Mbit/s, 's2' with 9.84 Mbit/s and 's3' with 9.84 Mbit/s.",
            ["link=l1", "from=one", .. Enumerable.Range(1, 8).Select(n => $"stream=s{n}")]
        );
    }

    [Fact]
    public void A_stream_to_many_receivers_counts_once_on_a_link() => Expect.None(Rule, Chain(7, "two", "three"));

    [Fact]
    public void Each_link_on_the_way_is_told() =>
        Assert.Equal(["l1", "l2"], RuleTester.Findings(Rule, Chain(8, "three", "two")).Select(finding => finding.Entities[0].Id));

    [Fact]
    public void The_two_directions_are_counted_apart()
    {
        var there = Chain(7, "two");
        var back = Enumerable
            .Range(0, 7)
            .Select(i => Stream($"b{i + 1}", $"two/transmit/{(8 * i) + 1}-{(8 * i) + 8}", $"one/receive/{(8 * i) + 1}-{(8 * i) + 8}"));
        var more = Stream("b8", "two/transmit/57-64", "one/receive/57-64");

        Expect.None(Rule, there.With([.. there.Patch.Streams, .. back]));
        Assert.Equal("two", Assert.Single(RuleTester.Findings(Rule, there.With([.. there.Patch.Streams, .. back, more]))).Entities[1].Id);
    }

    [Fact]
    public void The_share_can_be_set()
    {
        Assert.Empty(NetworkShow.Set(Rule, Chain(8, "two"), "maximumPercent", 80));
        Assert.Single(NetworkShow.Set(Rule, Chain(1, "two"), "maximumPercent", 9.8));
    }

    // 4 x 16.512 = 66.048 fit into 75 Mbit/s, 5 x 16.512 = 82.56 do not.
    [Fact]
    public void Class_a_carries_four_streams_of_eight_at_100()
    {
        Expect.None(Rule, Chain(4, "two").With(Transport.AvtpClassA));
        Assert.Single(RuleTester.Findings(Rule, Chain(5, "two").With(Transport.AvtpClassA)));
    }

    // 45 x 16.512 = 743.04 fit into 750 Mbit/s; at 1 ms and 24 bit 76 x 9.84 = 747.84 do.
    [Theory]
    [InlineData("avtp-class-a", 45)]
    [InlineData("rtp-l24", 76)]
    public void A_fast_link_carries_so_many_streams_of_eight(string transport, int most)
    {
        Show Fast(int streams)
        {
            var show = Chain(0)
                .With(new Transport(transport))
                .WithProfile(
                    "one",
                    profile => profile with { PortGroups = [SmallProfiles.Group("transmit", PortKind.Transmit, 8 * streams), .. profile.PortGroups.Skip(1)] }
                );
            return show.With(Link("l1", "one/net/1", "two/net/1"))
                .With([.. Enumerable.Range(0, streams).Select(i => Stream($"s{i}", $"one/transmit/{(8 * i) + 1}-{(8 * i) + 8}", "two/receive/1-8"))]);
        }

        Expect.None(Rule, Fast(most));
        Assert.Single(RuleTester.Findings(Rule, Fast(most + 1)));
    }

    [Fact]
    public void A_transport_that_is_not_known_is_not_decided() =>
        Assert.Equal(RuleStatus.Undecided, Assert.Single(RuleTester.Run(Rule, Chain(1, "two").With(new Transport("odd"))).Rules).Status);

    [Fact]
    public void What_has_no_way_and_what_nobody_receives_loads_nothing()
    {
        Expect.None(Rule, Chain(8));
        Expect.None(Rule, Chain(8, "three").With(Link("l1", "one/net/1", "two/net/1") with { SpeedMbps = 10 }));
    }

    [Fact]
    public void Order_does_not_change_the_identity() =>
        Assert.Equal(Expect.Fingerprints(Rule, Chain(9, "two", "three")), Expect.Fingerprints(Rule, Chain(9, "two", "three").Reversed()));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
