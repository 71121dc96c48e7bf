using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Tests.Assignment;

/// <summary>Where not all can be placed, a search that ends early shows in its result: assigned again, it places more.</summary>
public class AssignedAgainTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    // Two stage wedges of the monitor console get in where an outfill of the other console gives up the block to them: neither of the two gains alone.
    [Theory]
    [InlineData(0)]
    [InlineData(44)]
    public void A_festival_with_dead_points_assigned_again_places_no_more(int seed)
    {
        var result = Engine.Assign(Worn(seed));

        var again = Engine.Assign(result.Show);

        Assert.NotEmpty(result.Unplaced);
        Assert.True(again.Unplaced.Count >= result.Unplaced.Count, $"{again.Unplaced.Count} without a place instead of {result.Unplaced.Count}.");
    }

    /// <summary>The festival with points that have failed, and without some of its feeds, lines, streams and routes.</summary>
    private static Show Worn(int seed)
    {
        var show = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", "04-festival.show.json")).Value!;
        var dice = new TinyDice(seed);
        var dead = new List<UnavailablePoints>(show.Rig.Unavailable);
        var percent = dice.Pick([10, 25, 40, 60]);
        foreach (var device in Engine.Resolve(show).Devices.Where(device => device.Profile.Kind != DeviceKind.Switch))
        {
            foreach (var group in device.Groups.Where(group => group.Kind is PortKind.Output or PortKind.Input or PortKind.Transmit or PortKind.Receive))
            {
                for (var number = 1; number <= group.Count; number++)
                {
                    if (dice.In(group.Kind is PortKind.Output or PortKind.Input ? percent : 2))
                    {
                        dead.Add(new UnavailablePoints { At = new PointRange(device.Model.Id, group.Id, number, number) });
                    }
                }
            }
        }

        var hasPatch = !dice.In(50);
        return show with
        {
            Rig = show.Rig with { Unavailable = dead.ToValueList() },
            Feeds = show.Feeds.Where(_ => dice.In(85)).ToValueList(),
            Lines = show.Lines.Where(_ => dice.In(85)).ToValueList(),
            Patch = show.Patch with
            {
                Streams = show.Patch.Streams.Where(_ => hasPatch && dice.In(80)).ToValueList(),
                Routes = show.Patch.Routes.Where(_ => hasPatch && dice.In(80)).ToValueList(),
            },
        };
    }
}
