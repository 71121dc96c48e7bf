namespace RoutingRules.Architecture.Tests;

public class ArrowTests
{
    public static TheoryData<string> Assemblies => [.. Rooms.Assemblies.Keys];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void An_assembly_uses_only_those_below_it(string assembly)
    {
        var types = CompiledTypes.Of(assembly);

        Assert.NotEmpty(types.Types);
        Assert.Empty(types.Arrows.Select(arrow => Judge.Between(assembly, arrow)).OfType<string>());
    }

    [Theory]
    [InlineData("RoutingRules", 1500)]
    [InlineData("RoutingRules.Planning", 200)]
    [InlineData("RoutingRules.Reports", 300)]
    public void A_room_uses_only_those_before_it(string assembly, int atLeast)
    {
        var arrows = CompiledTypes.Of(assembly).Arrows.Where(arrow => arrow.Assembly == assembly).ToList();

        Assert.InRange(arrows.Count, atLeast, int.MaxValue);
        Assert.Empty(arrows.Select(arrow => Judge.Inside(assembly, arrow)).OfType<string>());
    }

    [Fact]
    public void Rules_do_not_use_each_other() => Assert.Empty(CompiledTypes.Of("RoutingRules").Arrows.Select(Judge.BetweenRules).OfType<string>());

    /// <summary>The judge itself: an arrow of the compiled core that is turned round is caught, whichever it is.</summary>
    [Fact]
    public void Every_arrow_between_rooms_is_caught_when_it_is_turned_round()
    {
        var between = CompiledTypes
            .Of("RoutingRules")
            .Arrows.Where(arrow => arrow.Assembly == "RoutingRules")
            .Where(arrow => Rooms.Find(arrow.Assembly, Arrow.NamespaceOf(arrow.From)) != Rooms.Find(arrow.Assembly, Arrow.NamespaceOf(arrow.To)))
            .ToList();

        Assert.InRange(between.Count, 800, int.MaxValue);
        Assert.All(between, arrow => Assert.NotNull(Judge.Inside("RoutingRules", new Arrow(arrow.To, arrow.From, "RoutingRules"))));
    }

    [Fact]
    public void The_verifier_knows_nothing_of_the_search()
    {
        Assert.Equal(["RoutingRules.Abstractions"], Rooms.Assemblies["RoutingRules.Verification"]);
        Assert.NotNull(
            Judge.Between("RoutingRules.Verification", new Arrow("RoutingRules.Verification.RigFacts", "RoutingRules.Signal.ShowResolver", "RoutingRules"))
        );
    }
}
