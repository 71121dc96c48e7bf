using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Two shows, one after the other.</summary>
internal sealed record ShowPair(Show Before, Show After)
{
    /// <summary>Two acts on one rig: other routes and streams, some feeds and lines gone, some in another order, some inputs with other settings.</summary>
    public static Arbitrary<ShowPair> OneRig() =>
        Arb.From(
            from before in ShowArbitraries.Valid().Generator
            from patch in PatchArbitraries.Valid(before.Rig)
            from other in ShowArbitraries.Valid().Generator
            from dropped in Gen.Choose(0, 7)
            from inputs in Gen.Choose(0, 3)
            from keeps in Gen.Choose(0, 3)
            select new ShowPair(
                before,
                before with
                {
                    Title = other.Title,
                    Feeds = before.Feeds.Where((_, i) => (i & 7) != dropped).ToValueList(),
                    Lines = before.Lines.Where((_, i) => (i & 3) != (dropped & 3)).Reverse().ToValueList(),
                    Patch = keeps switch
                    {
                        0 => before.Patch,
                        1 => before.Patch with { Routes = patch.Routes },
                        _ => patch with { Inputs = before.Patch.Inputs },
                    },
                    Rig = inputs == 0 ? before.Rig with { Cables = before.Rig.Cables.Skip(1).ToValueList() } : before.Rig,
                }
            ),
            static pair =>
                ShowArbitraries
                    .Valid()
                    .Shrinker(pair.Before)
                    .Select(smaller => new ShowPair(smaller, pair.After))
                    .Concat(ShowArbitraries.Valid().Shrinker(pair.After).Select(smaller => new ShowPair(pair.Before, smaller)))
        );

    /// <summary>Two shows with mistakes that have nothing to do with each other but the ids of their devices.</summary>
    public static Arbitrary<ShowPair> Strangers() =>
        Arb.From(from before in ShowArbitraries.Messy().Generator from after in ShowArbitraries.Messy().Generator select new ShowPair(before, after));
}
