using RoutingRules.Benchmarks;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Resolving;

namespace RoutingRules.Tests.Cost;

/// <summary>
/// What one check may cost, so that a rule that looks at everything for everything is noticed. Counted in bytes and units of work, which are the same on
/// every machine, and not in time. When the ceilings were set a check took 5.3 times its document, 7.3 times a short one, and 18,035 units.
/// </summary>
public sealed class CheckCostTests
{
    private const int Tries = 5;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    private static readonly byte[] Festival = ShowWriter.ToUtf8(
        Engine.Assign(ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", "04-festival.show.json")).Value!).Show
    );

    private static readonly byte[] Short = ShowWriter.ToUtf8(Engine.Assign(Cut(ShowReader.Read(Festival).Value!)).Show);

    [Fact]
    public void Reading_and_checking_the_patched_festival_allocates_at_most_six_and_a_quarter_times_its_document()
    {
        var least = Allocated(() => Check(Festival));

        Assert.True(4 * least <= 25L * Festival.Length, $"{least} bytes for a document of {Festival.Length}.");
    }

    [Fact]
    public void Of_a_show_that_asks_for_little_of_the_rig_a_check_allocates_at_most_eight_and_a_half_times_the_document()
    {
        var least = Allocated(() => Check(Short));

        Assert.True(2 * least <= 17L * Short.Length, $"{least} bytes for a document of {Short.Length}.");
    }

    [Fact]
    public void Walking_down_from_every_point_allocates_nothing()
    {
        var graph = Engine.Resolve(LargeRigs.Create(1_240)).Graph;
        var met = 0;

        var least = Allocated(() =>
        {
            for (var point = 0; point < graph.PointCount; point++)
            {
                foreach (var next in graph.Downward(new PointIndex(point)))
                {
                    met += next.Value == point ? 1 : 0;
                }
            }
        });

        Assert.True(met >= graph.PointCount, $"{met} of {graph.PointCount}.");
        Assert.Equal(0, least);
    }

    [Fact]
    public void Ends_of_signal_take_a_few_bits_for_each_point()
    {
        var show = Engine.Resolve(ShowReader.Read(Festival).Value!);
        _ = show.Ears.All.Count + show.Graph.Fed(new PointIndex(0)).Length;

        var least = Allocated(() => _ = EndPlaces.Ears(show));

        Assert.True(least <= show.Graph.PointCount, $"{least} bytes for {show.Graph.PointCount} points.");
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

    private static void Check(byte[] show) => Engine.Check(ShowReader.Read(show).Value!);

    /// <summary>The first few feeds and lines, without a patch.</summary>
    private static Show Cut(Show show) =>
        show with
        {
            Feeds = show.Feeds.Take(12).ToValueList(),
            Lines = show.Lines.Take(12).ToValueList(),
            Patch = show.Patch with { Routes = [], Streams = [] },
        };

    /// <summary>
    /// What an action allocates once it has run. Other tests run beside this one; what they keep of the shared pools has to be made anew, so the least of
    /// several counts.
    /// </summary>
    private static long Allocated(Action action)
    {
        action();
        var least = long.MaxValue;
        for (var i = 0; i < Tries; i++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            action();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return least;
    }
}
