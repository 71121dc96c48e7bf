using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.ChannelMaps;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Tests.Checking.Rules;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.ChannelMaps;

/// <summary>The map that a device has can always be put back: what does not change is not judged.</summary>
public sealed class OwnMapPromises
{
    private const int Cases = 200;

    [Property(MaxTest = Cases)]
    public Property The_own_channel_map_changes_nothing_however_messy_the_show() =>
        Promise.Of(
            MessyShows.Shows().Generator.Select(messy => messy.Show with { Feeds = [.. messy.Show.Feeds.Where(feed => !feed.To.IsEmpty)] }).ToArbitrary(),
            show =>
            {
                var resolved = Promise.Resolve(show);
                foreach (var device in resolved.Devices.Where(device => device.ProfileState == ProfileState.Found && !device.Profile.Routing.IsEmpty))
                {
                    var result = MapImport.Apply(Promise.Engine, show, Own(resolved, device));
                    if (!result.Problems.IsEmpty || !result.Edits.IsEmpty || !result.Moves.IsEmpty)
                    {
                        return $"{device.Id}: {string.Join(' ', result.Problems)} {result.Edits.Count} edits, {result.Moves.Count} moves";
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property The_own_stream_ports_change_nothing_however_messy_the_show() =>
        Promise.Of(
            MessyShows.Shows().Generator.Select(messy => messy.Show with { Feeds = [.. messy.Show.Feeds.Where(feed => !feed.To.IsEmpty)] }).ToArbitrary(),
            show =>
            {
                var resolved = Promise.Resolve(show);
                foreach (
                    var device in resolved.Devices.Where(device =>
                        device.ProfileState == ProfileState.Found && device.Groups.Any(group => group.Kind is PortKind.Transmit or PortKind.Receive)
                    )
                )
                {
                    using var written = new MemoryStream();
                    StreamPortMap.Write(Promise.Engine, show, device.Id, written);
                    var result = StreamPortImport.Apply(Promise.Engine, show, device.Id, written.ToArray());
                    if (!result.Problems.IsEmpty || !result.Edits.IsEmpty || !result.Moves.IsEmpty)
                    {
                        return $"{device.Id}: {string.Join(' ', result.Problems)} {result.Edits.Count} edits, {result.Moves.Count} moves";
                    }
                }

                return null;
            }
        );

    /// <summary>The card takes whole blocks of two; the show has torn one, and another is to be silenced.</summary>
    [Fact]
    public void Where_a_torn_block_stays_another_may_change_and_none_may_be_torn_further()
    {
        var card = new DeviceProfile
        {
            Id = new("test/card"),
            Version = 1,
            Kind = DeviceKind.Processor,
            Name = "Card",
            PortGroups =
            [
                new()
                {
                    Id = new("in"),
                    Kind = PortKind.Input,
                    Count = 4,
                },
                new()
                {
                    Id = new("out"),
                    Kind = PortKind.Output,
                    Count = 4,
                },
            ],
            Routing =
            [
                new()
                {
                    From = new("in"),
                    To = new("out"),
                    Mode = RoutingMode.Block,
                    BlockSize = 2,
                },
            ],
        };
        var show = Of(("card", card)).With(Route("card/in/1", "card/out/2"), Route("card/in/3-4", "card/out/3-4"));
        var resolved = Promise.Resolve(show);
        var own = Own(resolved, resolved.Devices[0]);
        var silenced = own with
        {
            Channels = own.Channels.Select(channel => channel.Channel < 2 ? channel : channel with { Input = default, InputChannel = 0 }).ToValueList(),
        };
        var torn = own with { Channels = own.Channels.Select(channel => channel.Channel != 2 ? channel : channel with { InputChannel = 3 }).ToValueList() };

        Assert.Contains("RR2006", Promise.Engine.Check(show).Findings.Select(finding => finding.Rule));
        Assert.Equal(["card/out/3", "card/out/4"], MapImport.Apply(Promise.Engine, show, silenced).Moves.Select(move => move.At.ToString()));
        Assert.NotEmpty(MapImport.Apply(Promise.Engine, show, torn).Problems);
    }

    /// <summary>What each sink takes by a route, asked of the graph.</summary>
    private static ChannelMap Own(ResolvedShow show, DeviceNode device) =>
        new()
        {
            Device = device.Id,
            Channels = device
                .Groups.Where(group => device.Profile.Routing.Any(entry => entry.To == group.Id))
                .SelectMany(group =>
                    Enumerable
                        .Range(0, group.Count)
                        .Select(channel =>
                        {
                            var sink = device.First(group) + channel;
                            var source = show.Graph.Upstream(sink);
                            return
                                show.Graph.Via(sink) is HopKind.Fixed or HopKind.Factory or HopKind.Route
                                && !source.IsNone
                                && show.Graph.DeviceOf(source) == device
                                ? new MapChannel
                                {
                                    Output = group.Id,
                                    Channel = channel,
                                    Input = show.Graph.GroupOf(source).Id,
                                    InputChannel = show.Graph.NumberOf(source) - 1,
                                }
                                : new MapChannel { Output = group.Id, Channel = channel };
                        })
                )
                .ToValueList(),
        };
}
