using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment.Explaining;

/// <summary>A conflict out of which more can be left once something else was.</summary>
public sealed class ConflictRoundsTests
{
    /// <summary>A console that sends in blocks of three.</summary>
    private static DeviceProfile Console(string id, int blocks) =>
        new()
        {
            Id = new(id),
            Kind = DeviceKind.Console,
            Name = "Test console",
            PortGroups =
            [
                SmallProfiles.Group("aux", PortKind.Source, 2),
                SmallProfiles.Group("out", PortKind.Output, 2) with
                {
                    Level = SignalLevel.Line,
                },
                SmallProfiles.Group("transmit", PortKind.Transmit, 3 * blocks) with
                {
                    BlockSize = 3,
                },
                SmallProfiles.Network(2),
            ],
            Routing = [SmallProfiles.Entry("aux", "transmit", RoutingMode.Free), SmallProfiles.Entry("aux", "out", RoutingMode.Free)],
        };

    /// <summary>A box of three outputs that takes one block of three.</summary>
    private static DeviceProfile Box(string id, RoutingMode mode) =>
        new()
        {
            Id = new(id),
            Kind = DeviceKind.StageBox,
            Name = "Test box",
            PortGroups =
            [
                SmallProfiles.Group("out", PortKind.Output, 3) with
                {
                    Level = SignalLevel.Line,
                },
                SmallProfiles.Group("receive", PortKind.Receive, 3) with
                {
                    BlockSize = 3,
                },
                SmallProfiles.Network(2),
            ],
            Routing = [SmallProfiles.Entry("receive", "out", mode)],
        };

    // The desk sends one block and no more, which stays as it is: mix one and mix two. Mix one may be at the fixed box or at the free one, mix two at the
    // fixed box or at the desk. The wedge and the fill come from the other console, and each takes the only block of its box,
    // at an output that neither mix may use.
    // Mix one alone goes to the free box. Beside the wedge it is left the fixed box, where mix two would sound next to it unasked, unless it is wanted there
    // too.
    // Without the fill all find a place so, and without the wedge mix one stands at the free box. Without mix two there is still none for mix one; and now the
    // fill is not needed for that any more: mix one and the wedge do not fit together by themselves.
    [Fact]
    public void What_is_no_longer_needed_when_another_is_gone_is_left_out_as_well()
    {
        var rig = SmallShow
            .Of(
                ("desk", Console("test/desk", 1)),
                ("other", Console("test/other", 2)),
                ("fixed", Box("test/fixed", RoutingMode.Fixed)),
                ("free", Box("test/free", RoutingMode.Free)),
                ("guest", Box("test/free", RoutingMode.Free))
            )
            .With(SmallShow.Stream("stays", "desk/transmit/1-3", "guest/receive/1-3") with { Keep = true })
            .With(SmallShow.Route("desk/aux/1-2", "desk/transmit/1-2"));
        var show = rig with
        {
            Rig = rig.Rig with
            {
                Reserved = [new() { At = SmallShow.At("free/out/3"), Reason = "pins only" }, new() { At = SmallShow.At("fixed/out/3"), Reason = "pins only" }],
            },
            Feeds =
            [
                Mix("two", 2, "fixed", "desk"),
                SmallShow.Feed("wedge", FeedRole.Monitor, "other/aux/1", "free/out/3"),
                SmallShow.Feed("fill", FeedRole.Monitor, "other/aux/2", "fixed/out/3"),
                Mix("one", 1, "fixed", "free"),
            ],
        };

        var result = RoutingEngine.CreateBuilder().Build().Assign(show, new() { ExplainUnplaced = true });

        Assert.Equal(["two/1 desk", "wedge/1 free", "fill/1 fixed"], result.Placements.Select(place => $"{place.Demand} {place.At.Device}"));
        var unplaced = Assert.Single(result.Unplaced);
        Assert.Equal(("one/1", ConflictProof.Searched), (unplaced.Demand, unplaced.ConflictProof));
        Assert.Equal(["wedge/1"], unplaced.Conflict);
        Assert.Empty(unplaced.ConflictPoints);
    }

    private static Feed Mix(string id, int bus, params string[] devices) =>
        new()
        {
            Id = new(id),
            Role = FeedRole.Monitor,
            Source = SmallShow.At($"desk/aux/{bus}"),
            To = [new() { Devices = devices.Select(device => new Id<Device>(device)).ToValueList() }],
        };
}
