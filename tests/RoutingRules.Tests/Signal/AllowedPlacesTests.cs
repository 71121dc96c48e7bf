using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Signal;

/// <summary>Which points may serve a demand that names devices and zones, on a stage with two zones.</summary>
public sealed class AllowedPlacesTests
{
    // Box a stands left, box b and the amplifier right; box c in no zone. The amplifier hangs on outputs 3 and 4 of box a.
    private static ResolvedShow Resolve(params Feed[] feeds)
    {
        var box = SmallProfiles.Box with
        {
            Id = new("test/box-of-four"),
            PortGroups = SmallProfiles.Box.PortGroups.Select(group => group.Id.Value is "out" or "in" ? group with { Count = 4 } : group).ToValueList(),
        };
        var show = Of(("desk", SmallProfiles.Console), ("a", box), ("b", box), ("c", box), ("amp", SmallProfiles.Amplifier));
        return Promise.Resolve(
            show with
            {
                Rig = show.Rig with
                {
                    Zones = [new() { Id = new("left") }, new() { Id = new("right") }],
                    Devices = show
                        .Rig.Devices.Select(device =>
                            device with
                            {
                                Zone = device.Id.Value switch
                                {
                                    "a" => new Id<Zone>("left"),
                                    "b" or "amp" => new Id<Zone>("right"),
                                    _ => null,
                                },
                            }
                        )
                        .ToValueList(),
                    Cables = [Cable("a/out/3-4", "amp/in/1-2")],
                },
                Feeds = feeds.ToValueList(),
            }
        );
    }

    private static Feed To(string source, string devices, string zones) =>
        new()
        {
            Id = new("f"),
            Role = FeedRole.Monitor,
            Source = At(source),
            To = [new() { Devices = Ids<Device>(devices), Zones = Ids<Zone>(zones) }],
        };

    private static ValueList<Id<T>> Ids<T>(string names) =>
        names.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(name => new Id<T>(name)).ToValueList();

    [Theory]
    [InlineData("desk/aux/1", "", "left", "a/out/1 a/out/2 a/out/3 a/out/4")]
    [InlineData("desk/aux/1", "", "right", "b/out/1 b/out/2 b/out/3 b/out/4")]
    [InlineData("desk/aux/1", "amp", "", "a/out/3 a/out/4")]
    [InlineData("desk/aux/1", "amp", "right", "a/out/3 a/out/4 b/out/1 b/out/2 b/out/3 b/out/4")]
    [InlineData("desk/aux/1", "a amp", "left", "a/out/1 a/out/2 a/out/3 a/out/4")]
    [InlineData("desk/aux/1", "c", "nowhere", "c/out/1 c/out/2 c/out/3 c/out/4")]
    [InlineData("desk/aux/1-2", "c", "left", "a/out/1 a/out/3 c/out/1 c/out/3")]
    public void Zones_and_devices_add_up_and_each_point_counts_once(string source, string devices, string zones, string places)
    {
        var show = Resolve(To(source, devices, zones));

        Assert.Equal(places, string.Join(' ', Assert.Single(show.Demands).Allowed.Select(run => show.Graph.Address(run))));
    }

    // One bus sounds at outputs 2 to 4. A feed that is pinned to one of them has it, and the others share the rest in their order.
    [Fact]
    public void Where_several_demands_could_be_served_alike_the_earlier_one_has_the_lower_number()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"))
            .With([Route(null, "desk/transmit/1"), .. Enumerable.Range(2, 3).Select(slot => Route("desk/aux/1", $"desk/transmit/{slot}"))]);
        string Existing(params Feed[] feeds)
        {
            var resolved = Promise.Resolve(show with { Feeds = feeds.ToValueList() });
            return string.Join(' ', resolved.Demands.Select(demand => demand.Existing.IsNone ? "none" : $"{resolved.Graph.NumberOf(demand.Existing)}"));
        }

        Feed Free(string id) => FeedTo(id, FeedRole.Monitor, "desk/aux/1", "box");
        Feed Pinned(string id, int number) => Feed(id, FeedRole.Monitor, "desk/aux/1", $"box/out/{number}");

        Assert.Equal("2 3 4 none", Existing(Free("a"), Free("b"), Free("c"), Free("d")));
        Assert.Equal("3 4 2", Existing(Free("a"), Free("b"), Pinned("c", 2)));
        Assert.Equal("2 4 3", Existing(Free("a"), Free("b"), Pinned("c", 3)));
        Assert.Equal("2 none 3", Existing(Free("a"), Pinned("b", 5), Pinned("c", 3)));
    }
}
