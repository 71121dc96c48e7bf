using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Signal;

public sealed class SignalGraphTests
{
    [Fact]
    public void A_point_of_a_loop_carries_nothing_on()
    {
        var show = Of(("a", SmallProfiles.Amplifier), ("b", SmallProfiles.Amplifier));
        var ring = show with { Rig = show.Rig with { Cables = [Cable("a/out/1", "b/in/1"), Cable("b/out/1", "a/in/1")] } };
        var graph = RoutingEngine.CreateBuilder().Build().Resolve(ring).Graph;
        var looping = graph.Find(At("a/out/1")[0]);

        Assert.True(graph.IsLooping(looping));
        Assert.Empty(graph.Carrying(looping));
        Assert.Equal([At("a/out/2")[0]], graph.Carrying(graph.Find(At("a/in/2")[0])).Select(point => graph.Address(point)));
    }
}
