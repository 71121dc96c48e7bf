using RoutingRules.Benchmarks;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Reading;

namespace RoutingRules.Tests.Cost;

/// <summary>
/// What one check may cost, so that a rule that looks at everything for everything is noticed. Counted in bytes and units of work, which are the same on
/// every machine, and not in time. When the ceilings were set a check took 6.5 times its document and 17,641 units: a quarter is left to grow into.
/// </summary>
public sealed class CheckCostTests
{
    private const int Tries = 5;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    private static readonly byte[] Festival = ShowWriter.ToUtf8(Engine.Assign(ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", "04-festival.show.json")).Value!).Show);

    [Fact]
    public void Reading_and_checking_the_patched_festival_allocates_at_most_eight_times_its_document()
    {
        Check();
        var least = long.MaxValue;

        // Other tests run beside this one; what they keep of the shared pools has to be made anew, so the least of several counts.
        for (var i = 0; i < Tries; i++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            Check();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.True(least <= 8L * Festival.Length, $"{least} bytes for a document of {Festival.Length}.");
    }

    [Fact]
    public void Every_rule_together_looks_at_the_patched_festival_at_most_22_thousand_times()
    {
        var units = Cost(ShowReader.Read(Festival).Value!);

        Assert.True(units <= 22_000, $"{units} units of work.");
    }

    [Fact]
    public void Eight_times_as_many_points_take_at_most_eight_and_a_half_times_the_work()
    {
        var small = Cost(LargeRigs.Create(1_240));
        var large = Cost(LargeRigs.Create(8 * 1_240));

        // The rigs are whole cells, so that one is exactly eight times the other but for the switches.
        Assert.True(2 * large <= 17 * small, $"{small} units become {large}.");
    }

    [Fact]
    public void A_rig_of_a_hundred_thousand_points_is_resolved_and_every_demand_of_it_served()
    {
        var resolved = Engine.Resolve(LargeRigs.Create(100_000));

        Assert.InRange(resolved.Graph.PointCount, 100_000, 101_000);
        Assert.DoesNotContain(resolved.Demands, demand => demand.Existing.IsNone);
    }

    private static long Cost(Show show)
    {
        var units = 0L;
        foreach (var rule in Engine.Check(show).Rules)
        {
            units += rule.WorkUnits;
        }

        return units;
    }

    private static void Check() => Engine.Check(ShowReader.Read(Festival).Value!);
}
