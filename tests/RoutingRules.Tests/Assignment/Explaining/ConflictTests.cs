using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment.Explaining;

public class ConflictTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    /// <summary>A console and a box of which only some outputs work.</summary>
    private static Show Rig(string dead, params Feed[] feeds)
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));
        return show with { Rig = show.Rig with { Unavailable = [new() { At = SmallShow.At(dead) }] }, Feeds = feeds.ToValueList() };
    }

    private static Feed Monitor(int number, string id) => SmallShow.FeedTo(id, FeedRole.Monitor, $"desk/aux/{number}", "box");

    private static AssignmentResult Assign(Show show, AssignmentOptions? options = null) =>
        Engine.Assign(show, (options ?? new()) with { ExplainUnplaced = true });

    private static string Text(AssignmentResult result)
    {
        using var output = new StringWriter { NewLine = "\n" };
        AssignmentTextReport.Write(result, output);
        return output.ToString();
    }

    [Fact]
    public void Three_feeds_for_two_outputs_are_a_matter_of_counting()
    {
        var result = Assign(
            Rig("box/out/3-8", Monitor(1, "a"), SmallShow.FeedTo("far", FeedRole.Monitor, "desk/aux/4", "desk"), Monitor(2, "b"), Monitor(3, "c"))
        );

        var unplaced = Assert.Single(result.Unplaced);
        Assert.Equal("c/1", unplaced.Demand);
        Assert.Equal(ConflictProof.Counted, unplaced.ConflictProof);
        Assert.Equal(["a/1", "b/1"], unplaced.Conflict);
        Assert.Equal([SmallShow.At("box/out/1-2")], unplaced.ConflictPoints);
        Assert.Contains(
            "    These 3 can only use these 2 points (box/out/1-2), which is too few: a [a/1], b [b/1], c [c/1]. Without any one of them the rest fits.\n",
            Text(result),
            StringComparison.Ordinal
        );
    }

    // A pair and two single signals need four points; three work. Without the pair two of three do, without a single one 1-2 and 3.
    [Fact]
    public void Pairs_count_double()
    {
        var result = Assign(Rig("box/out/4-8", SmallShow.FeedTo("pair", FeedRole.Monitor, "desk/aux/1-2", "box"), Monitor(3, "one"), Monitor(4, "two")));

        var unplaced = Assert.Single(result.Unplaced);
        Assert.Equal(("two/1", ConflictProof.Counted), (unplaced.Demand, unplaced.ConflictProof));
        Assert.Equal(["pair/1", "one/1"], unplaced.Conflict);
        Assert.Equal([SmallShow.At("box/out/1-3")], unplaced.ConflictPoints);
    }

    // Two points are free, 2 and 3, but no pair starts on an even number: four points for four signals, so that counting proves nothing.
    [Fact]
    public void Where_single_signals_lie_badly_for_a_pair_nothing_is_claimed_by_counting()
    {
        var result = Assign(
            Rig(
                "box/out/5-8",
                SmallShow.Feed("left", FeedRole.Monitor, "desk/aux/3", "box/out/1"),
                SmallShow.Feed("right", FeedRole.Monitor, "desk/aux/4", "box/out/4"),
                SmallShow.FeedTo("pair", FeedRole.Monitor, "desk/aux/1-2", "box")
            )
        );

        var unplaced = Assert.Single(result.Unplaced);
        Assert.Equal(("pair/1", ConflictProof.Searched), (unplaced.Demand, unplaced.ConflictProof));
        Assert.Equal(["left/1", "right/1"], unplaced.Conflict);
        Assert.Empty(unplaced.ConflictPoints);
        Assert.Contains(unplaced.Relaxations, relaxation => relaxation is { Kind: RelaxationKind.DropPin, Subject: "left/1" });
    }

    [Fact]
    public void A_reserved_output_and_another_zone_are_offered_and_nothing_else_moves()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("far", SmallProfiles.Box));
        show = show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("right"), Near = [new("left")] }, new() { Id = new("left"), Name = "Stage left" }],
                Devices = show
                    .Rig.Devices.Select(device =>
                        device.Id.Value switch
                        {
                            "box" => device with { Zone = new("right") },
                            "far" => device with { Zone = new("left") },
                            _ => device,
                        }
                    )
                    .ToValueList(),
                Reserved = [new() { At = SmallShow.At("box/out/2-8"), Reason = "guests" }],
            },
            Feeds =
            [
                new()
                {
                    Id = new("a"),
                    Role = FeedRole.Monitor,
                    Source = SmallShow.At("desk/aux/1"),
                    To = [new() { Zones = [new("right")] }],
                },
                new()
                {
                    Id = new("b"),
                    Role = FeedRole.Monitor,
                    Source = SmallShow.At("desk/aux/2"),
                    To = [new() { Zones = [new("right")] }],
                },
            ],
        };

        var result = Assign(show);

        Assert.Equal(
            [
                new()
                {
                    Kind = RelaxationKind.FreeReserved,
                    Subject = "box/out/2",
                    At = SmallShow.At("box/out/2"),
                    Moves = 0,
                },
                new()
                {
                    Kind = RelaxationKind.AllowZone,
                    Subject = "left",
                    At = SmallShow.At("far/out/1"),
                    Moves = 0,
                },
            ],
            Assert.Single(result.Unplaced).Relaxations
        );
        Assert.Contains(
            "    Would fit if box/out/2 were not reserved: it could then be at box/out/2.\n    Would fit if zone \"Stage left\" (left) were "
                + "allowed too: it could then be at far/out/1.\n",
            Text(result),
            StringComparison.Ordinal
        );
    }

    // Eight outputs, seven of them to stay free: one feed fits, two do not; with six to stay free they do.
    [Fact]
    public void One_spare_fewer_is_offered()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with { Feeds = [Monitor(1, "a"), Monitor(2, "b")] };

        var unplaced = Assert.Single(Assign(show, new() { Spares = 7 }).Unplaced);

        Assert.Equal(["a/1"], unplaced.Conflict);
        Assert.Equal(ConflictProof.Searched, unplaced.ConflictProof);
        Assert.Equal(
            [
                new()
                {
                    Kind = RelaxationKind.FewerSpares,
                    Subject = "6",
                    At = SmallShow.At("box/out/2"),
                    Moves = 0,
                },
            ],
            unplaced.Relaxations
        );
    }

    // One output of the box works. The main is plugged there and held, though the console would do for it as well.
    [Fact]
    public void A_hold_that_could_be_released_is_named_with_the_move()
    {
        var main = SmallShow.FeedTo("m", FeedRole.Main, "desk/aux/5", "box") with { To = [new() { Devices = [new("box"), new("desk")] }] };
        var patched = Engine.Assign(Rig("box/out/2-8", main), new() { Without = ["desk/out/1", "desk/out/2"] }).Show;
        var late = patched with { Feeds = [main, Monitor(1, "late")] };

        var unplaced = Assert.Single(Assign(late).Unplaced);

        Assert.Equal(("late/1", ConflictProof.Counted), (unplaced.Demand, unplaced.ConflictProof));
        Assert.Equal(["m/1"], unplaced.Conflict);
        Assert.Equal([SmallShow.At("box/out/1")], unplaced.ConflictPoints);
        Assert.Equal(
            [
                new()
                {
                    Kind = RelaxationKind.ReleaseHold,
                    Subject = "m/1",
                    At = SmallShow.At("box/out/1"),
                    Moves = 1,
                },
            ],
            unplaced.Relaxations
        );
    }

    [Fact]
    public void Of_contradicting_pins_the_others_are_the_conflict()
    {
        var show = Rig(
            "box/out/8",
            SmallShow.Feed("a", FeedRole.Monitor, "desk/aux/1", "box/out/1"),
            SmallShow.Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/1")
        );

        var result = Assign(show);

        Assert.Equal(AssignmentStatus.PinsContradict, result.Status);
        Assert.Equal([("a/1", "b/1"), ("b/1", "a/1")], result.Unplaced.Select(entry => (entry.Demand, Assert.Single(entry.Conflict))));
    }

    [Fact]
    public void Nothing_is_looked_into_unless_asked() =>
        Assert.Equal(ConflictProof.NotChecked, Assert.Single(Engine.Assign(Rig("box/out/2-8", Monitor(1, "a"), Monitor(2, "b"))).Unplaced).ConflictProof);

    [Fact]
    public void What_is_left_out_or_avoided_stays_so()
    {
        var show = Rig("box/out/8", Monitor(1, "a"), SmallShow.Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/2"));

        var result = Engine.Assign(show, new() { LeaveOut = ["b/1"], Avoid = [new() { Demand = "a/1", At = SmallShow.At("box/out/1") }] });

        Assert.Equal(("a/1", SmallShow.At("box/out/2")), Assert.Single(result.Placements.Select(place => (place.Demand, place.At))));
        Assert.Equal("b/1", Assert.Single(result.Unplaced).Demand);
        Assert.Throws<ArgumentException>(() => Engine.Assign(show, new() { LeaveOut = ["nobody"] }));
        Assert.Throws<ArgumentException>(() => Engine.Assign(show, new() { Avoid = [new() { Demand = "a/1", At = SmallShow.At("box/out/9") }] }));
    }

    // Feeds at outputs 1 and 2 in one block of the box, from one block of the console; output 8 does not work.
    [Fact]
    public void Utilisation_counts_places_blocks_and_streams()
    {
        var table = Engine.Assign(Rig("box/out/8", Monitor(1, "a"), Monitor(2, "b"))).Utilisation;

        Assert.Equal(["desk", "box"], table.Select(use => use.Device.Value));
        Assert.Equal((0, 2, 0, 2), (table[0].OutputsUsed, table[0].OutputsUsable, table[0].InputsUsed, table[0].InputsUsable));
        Assert.Equal((1, 2, 0, 2), (table[0].TransmitBlocksUsed, table[0].TransmitBlockLimit, table[0].ReceiveBlocksUsed, table[0].ReceiveBlockLimit));
        Assert.Equal((2, 7, 0, 8), (table[1].OutputsUsed, table[1].OutputsUsable, table[1].InputsUsed, table[1].InputsUsable));
        Assert.Equal((1, 2, 1), (table[1].ReceiveBlocksUsed, table[1].ReceiveBlockLimit, table[1].StreamsReceived));
    }
}
