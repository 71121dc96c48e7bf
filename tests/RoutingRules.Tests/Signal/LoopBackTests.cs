using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Signal;

/// <summary>A cable from an output of a device to an input of the same one is a plug like any other.</summary>
public sealed class LoopBackTests
{
    private static readonly Show Desk = Of(("desk", SmallProfiles.Console)).With(Route("desk/in/1", "desk/channel/3"));

    private static readonly Show Looped = Desk with { Rig = Desk.Rig with { Cables = [Cable("desk/out/1", "desk/in/1")] } };

    [Fact]
    public void Its_input_carries_what_its_output_carries()
    {
        var graph = Promise.Resolve(Looped).Graph;

        Assert.Equal("desk/main/1", graph.Address(graph.Origin(graph.Find(At("desk/channel/3")[0]))).ToString());
    }

    [Fact]
    public void It_is_no_point_of_the_wrong_kind() => Expect.None(new PointOfWrongKind(), Looped);
}
