using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Signal;

/// <summary>A desk and a box on two networks, each with a clock that another box leads; one more box hangs on nothing.</summary>
public sealed class SampleRatesTests
{
    private static readonly Clock Fast = NetworkShow.Clock("fast", "lead", rate: 96_000);

    private static readonly Clock Slow = NetworkShow.Clock("slow", "other", rate: 44_100);

    private static Show Two(string first, string second, bool isReversed, params Clock[] clocks)
    {
        var show = Of(
            ("desk", SmallProfiles.Console),
            ("box", SmallProfiles.Box),
            ("lead", SmallProfiles.Box),
            ("other", SmallProfiles.Box),
            ("idle", SmallProfiles.Box)
        );
        Link[] links = [NetworkShow.Link("l1", "desk/net/1", "box/net/1", "one"), NetworkShow.Link("l2", "box/net/2", "desk/net/2", "two")];
        return show with
        {
            Rig = show.Rig with
            {
                Clocks = clocks.ToValueList(),
                Networks =
                [
                    show.Rig.Networks[0] with
                    {
                        Id = new("one"),
                        Clock = new(first),
                    },
                    show.Rig.Networks[0] with
                    {
                        Id = new("two"),
                        Clock = new(second),
                    },
                ],
                Links = (isReversed ? links.Reverse() : links).ToValueList(),
            },
        };
    }

    private static string Rates(Show show) => string.Join(' ', Promise.Resolve(show).Devices.Select(device => device.SampleRate));

    // Desk and box follow the first network in the list, in whatever order links and clocks stand; leaders follow their clock; nothing is known of the idle
    // box.
    [Theory]
    [InlineData("fast", "slow", false, "96000 96000 96000 44100 48000")]
    [InlineData("fast", "slow", true, "96000 96000 96000 44100 48000")]
    [InlineData("slow", "fast", false, "44100 44100 96000 44100 48000")]
    [InlineData("slow", "fast", true, "44100 44100 96000 44100 48000")]
    [InlineData("unknown", "slow", false, "44100 44100 96000 44100 48000")]
    public void A_device_on_two_networks_runs_at_the_rate_of_the_first(string first, string second, bool isReversed, string rates)
    {
        Assert.Equal(rates, Rates(Two(first, second, isReversed, Fast, Slow)));
        Assert.Equal(rates, Rates(Two(first, second, isReversed, Slow, Fast)));
    }

    [Fact]
    public void A_clock_that_a_device_leads_or_backs_up_counts_before_its_networks_and_the_first_of_two()
    {
        Assert.Equal("44100 96000 96000 48000 48000", Rates(Two("fast", "slow", false, Fast, Slow with { Leader = new("desk") })));
        Assert.Equal("44100 96000 96000 44100 48000", Rates(Two("fast", "slow", false, Fast, Slow with { Backup = new("desk") })));
        Assert.Equal(
            "96000 44100 44100 48000 48000",
            Rates(Two("slow", "slow", false, Fast with { Leader = new("desk") }, Slow with { Leader = new("lead"), Backup = new("desk") }))
        );
    }

    [Fact]
    public void A_rig_with_one_clock_runs_on_it_and_one_without_at_48_kilohertz()
    {
        Assert.Equal("96000 96000 96000 96000 96000", Rates(Two("unknown", "unknown", false, Fast)));
        Assert.Equal("48000 48000 48000 48000 48000", Rates(Two("unknown", "unknown", false)));
    }

    // The desk runs at the rate of the first network; a stream of the second travels at that of the second, and one of a network without a clock as its sender
    // runs.
    [Fact]
    public void A_stream_travels_at_the_rate_of_its_own_network()
    {
        var show = Promise.Resolve(Two("fast", "slow", false, Fast, Slow).WithNetwork("three"));
        var rig = show.Document.Rig;

        Assert.Equal([96_000, 44_100, 96_000], rig.Networks.Select(network => NetworkRates.Of(rig, network, show.Devices[0])));
    }
}
