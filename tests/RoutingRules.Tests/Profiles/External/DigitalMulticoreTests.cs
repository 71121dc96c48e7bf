using RoutingRules.Profiles;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Tests.Profiles.External;

/// <summary>Digital multicore profiles against AES10, as excerpted in a handbook and an encyclopaedia (the standard itself was not read).</summary>
public class DigitalMulticoreTests
{
    // AES10 by the same excerpts: 125 Mbit/s on the line, 4B5B coded, so 100 Mbit/s of data; 32 bits for each channel and sample.
    private const long DataBitsPerSecond = 100_000_000;
    private const int BitsPerChannel = 32;

    // AES10: 64 channels at 32 to 48 kHz without varispeed; 56 with varispeed of 12.5 per cent; 28 at 64 to 96 kHz with varispeed.
    [Theory]
    [InlineData("generic/console-large", 44_100, 64)]
    [InlineData("generic/console-large", 48_000, 64)]
    [InlineData("generic/console-large", 88_200, 28)]
    [InlineData("generic/console-large", 96_000, 28)]
    [InlineData("generic/multicore-box", 48_000, 64)]
    [InlineData("generic/multicore-box", 96_000, 28)]
    [InlineData("generic/multicore-box-small", 44_100, 56)]
    [InlineData("generic/multicore-box-small", 48_000, 56)]
    [InlineData("generic/multicore-box-small", 96_000, 28)]
    [InlineData("generic/multicore-bridge", 48_000, 64)]
    [InlineData("generic/multicore-bridge", 88_200, 28)]
    public void A_link_carries_the_channels_of_the_standard(string id, int sampleRate, int channels)
    {
        var compiled = ProfileCompiler.Compile(ProfilePack.Get(id), sampleRate);
        var slots = compiled.Groups.Where(group => group.IsCarrier).ToArray();

        Assert.Equal(2, slots.Length);
        Assert.All(slots, group => Assert.Equal(channels, group.Count));
    }

    [Fact]
    public void No_link_carries_more_than_its_data_rate_holds()
    {
        var links = ProfilePack.All.SelectMany(profile => profile.PortGroups).Where(group => group.Carrier is not null).ToArray();

        Assert.NotEmpty(links);
        Assert.All(
            links,
            group => Assert.All(group.CountByRate, entry => Assert.InRange((long)entry.Count * BitsPerChannel * entry.SampleRate, 1, DataBitsPerSecond))
        );
    }

    [Fact]
    public void The_varispeed_box_stays_inside_the_data_rate_at_full_varispeed()
    {
        var small = ProfilePack.Get("generic/multicore-box-small").PortGroups.Where(group => group.Carrier is not null).ToArray();
        var full = ProfilePack.Get("generic/multicore-box").PortGroups.Where(group => group.Carrier is not null).ToArray();

        Assert.All(small, group => Assert.All(group.CountByRate, entry => Assert.True(AtFullVarispeed(entry) <= DataBitsPerSecond)));
        Assert.Contains(full.SelectMany(group => group.CountByRate), entry => AtFullVarispeed(entry) > DataBitsPerSecond);
    }

    [Fact]
    public void Carrier_slots_live_on_a_jack_of_their_own_device()
    {
        Assert.All(
            ProfilePack.All,
            profile =>
                Assert.All(
                    profile.PortGroups.Where(group => group.Carrier is not null),
                    group =>
                    {
                        var jacks = profile.PortGroups.Single(other => other.Id == group.Carrier!.Value.Group);
                        Assert.Equal(PortKind.Network, jacks.Kind);
                        Assert.Empty(jacks.Bridged);
                        Assert.InRange(group.Carrier!.Value.Last, 1, jacks.Count!.Value);
                    }
                )
        );
    }

    private static double AtFullVarispeed(RateCount entry) => entry.Count * BitsPerChannel * entry.SampleRate * 1.125;
}
