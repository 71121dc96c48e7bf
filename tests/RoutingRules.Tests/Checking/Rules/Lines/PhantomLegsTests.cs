using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Signal.Graph;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

/// <summary>A line into a split whose legs go to a box and to a console: either may be the one with phantom power.</summary>
public sealed class PhantomLegsTests
{
    private static Show Split(PhantomNeed need, bool? atFirst, bool? atSecond) =>
        LineRig
            .Show(Line("vox", "split/in/1", "desk/channel/1").Needs(need))
            .Cables(Cable("split/one/1", "box/in/1"), Cable("split/two/1", "desk/in/1"))
            .Inputs(LineRig.Phantom("box/in/1", atFirst), LineRig.Phantom("desk/in/1", atSecond));

    [Theory]
    [InlineData(true, false, 0, "box/in/1")]
    [InlineData(false, true, 1, "desk/in/1")]
    [InlineData(null, true, 1, "desk/in/1")]
    public void Phantom_power_comes_back_over_either_leg(bool? atFirst, bool? atSecond, int setting, string input) =>
        Expect.One(
            new PhantomForbidden(),
            Split(PhantomNeed.Forbidden, atFirst, atSecond),
            Severity.Error,
            $"/patch/inputs/{setting}",
            $"Phantom power is on at {input}, but 'vox' must not get it.",
            $"input={input}"
        );

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(null, true)]
    public void Phantom_power_on_at_either_leg_is_enough(bool? atFirst, bool? atSecond) =>
        Expect.None(new PhantomMissing(), Split(PhantomNeed.Required, atFirst, atSecond));

    // The cable to the console leads through a second split, so that its supply stands behind two of them.
    [Fact]
    public void Supplies_are_found_behind_every_leg_in_the_order_of_the_cables()
    {
        var show = Of(("desk", Testing.SmallProfiles.Console), ("box", Testing.SmallProfiles.Box), ("split", LineRig.Split), ("more", LineRig.Split))
            .Cables(
                Cable("split/one/1", "box/in/1"),
                Cable("split/two/1", "more/in/1"),
                Cable("more/isolated/1", "box/in/8"),
                Cable("more/two/1", "desk/in/2")
            );
        var graph = RoutingEngine.CreateBuilder().Build().Resolve(show).Graph;

        Assert.Equal(
            ["box/in/1", "desk/in/2"],
            PhantomPath.Supplies(new GraphWalk(graph), graph.Find(At("split/in/1")[0])).Select(point => graph.Address(point).ToString())
        );
    }
}
