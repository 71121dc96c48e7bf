using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>Makes whole shows over made rigs.</summary>
internal static class ShowMaker
{
    public static Show Valid(Dice dice, bool mayBeUnpatched)
    {
        var show = Intended(dice);
        var patch = mayBeUnpatched && dice.Chance(50) ? new Patch() : new PatchMaker(dice, new RigView(show.Rig)).Make();
        return show with { Patch = patch with { Extensions = Extensions(dice) } };
    }

    public static Show Messy(Dice dice)
    {
        var show = Intended(dice);
        if (dice.Chance(70))
        {
            show = show with { Rig = show.Rig with { Cables = new CableMaker(dice, new RigView(show.Rig)).Messy() } };
        }

        return show with
        {
            Patch = new MessyPatchMaker(dice, new RigView(show.Rig)).Make(),
        };
    }

    private static Show Intended(Dice dice)
    {
        var rig = new RigMaker(dice).Make() with { Extensions = Extensions(dice) };
        var intents = new IntentMaker(dice, new RigView(rig));
        return new Show
        {
            Title = "Made",
            Rig = rig,
            Feeds = intents.Feeds(),
            Lines = intents.Lines(),
            Extensions = Extensions(dice),
        };
    }

    private static ExtensionData? Extensions(Dice dice) =>
        dice.Chance(15) ? new ExtensionData { Json = """{"crew":{"version":1,"ink":["blue",2.50]}}""" } : null;
}
