using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Labels;

/// <summary>
/// A console, eight characters wide, whose aux 1-4 come out of the first outputs of a box, twelve characters wide, and whose channels get its inputs.
/// </summary>
internal static class LabelRig
{
    public static Show Show(params PointLabel[] labels)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
            .With(Stream("out", "desk/transmit/1-4", "box/receive/1-4"), Stream("in", "box/transmit/1-4", "desk/receive/1-4"));
        return show with { Patch = show.Patch with { Labels = labels.ToValueList() } };
    }

    public static PointLabel Label(string at, string text) => new() { At = At(at), Text = text };

    public static Feed Mix(int number) => Feed($"mix-{number}", FeedRole.Monitor, $"desk/aux/{number}", $"box/out/{number}");
}
