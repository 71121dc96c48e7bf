using RoutingRules.Benchmarks;
using RoutingRules.Planning.Losses;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Tests.Cost;

/// <summary>What looking at all single failures may cost, in points, links and ways looked at, which are the same on every machine.</summary>
public sealed class ImpactCostTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    [Fact]
    public void All_single_failures_of_a_thousand_points_look_at_each_point_a_few_times()
    {
        var show = Engine.Resolve(LargeRigs.Create(1_240));
        var (losses, work) = ImpactBuilder.Measure(show, new ImpactOptions());

        Assert.InRange(losses.Count, 20, 100);
        Assert.True(work <= 8L * show.Graph.PointCount, $"{work} for {show.Graph.PointCount} points and {losses.Count} losses.");
    }

    [Fact]
    public void Four_times_the_rig_on_networks_of_their_own_takes_four_times_the_work()
    {
        var (_, small) = ImpactBuilder.Measure(Engine.Resolve(LargeRigs.Create(8 * 310)), new ImpactOptions());
        var (_, large) = ImpactBuilder.Measure(Engine.Resolve(LargeRigs.Create(32 * 310)), new ImpactOptions());

        Assert.True(large * 2 <= small * 9, $"{small} becomes {large}.");
    }
}
