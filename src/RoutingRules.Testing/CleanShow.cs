using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>A show wired by hand, not by the assigner: what each demand is served by is known from how it was made.</summary>
/// <remarks>
/// A console <c>desk</c>, boxes <c>box-1</c> to <c>box-3</c> in zones of their own, each with streams of its own both ways; every demand delivered, pairs
/// on odd numbers, mains on equal numbers, labels at both ends, phantom and gain stated, in-ear feeds limited, and at least two outputs of each box free.
/// </remarks>
public sealed record CleanShow
{
    private readonly CleanRecipe recipe;

    private CleanShow(CleanRecipe recipe, Show show, ValueList<Placement> placements)
    {
        this.recipe = recipe;
        Show = show;
        Placements = placements;
    }

    /// <summary>The show.</summary>
    public Show Show { get; }

    /// <summary>Where each demand is served, in demand order: an output run for an entry of a feed, an input run for a line.</summary>
    public ValueList<Placement> Placements { get; }

    internal static CleanShow Make(Dice dice) => Make(CleanRecipe.Make(dice));

    internal IEnumerable<CleanShow> Smaller() => recipe.Smaller().Select(Make);

    private static CleanShow Make(CleanRecipe recipe)
    {
        var wiring = new CleanWiring(recipe);
        return new CleanShow(recipe, wiring.Build(), wiring.Placements);
    }
}
