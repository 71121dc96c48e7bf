using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Hearing;

/// <summary>How points in somebody's ears are called.</summary>
internal static class EarWords
{
    /// <summary>The address of a run, with what the panel prints there: <c>ears/in/3-4 (2L, 2R)</c>.</summary>
    public static string At(RuleContext context, PointIndex first, int width)
    {
        var marks = context.GroupOf(first).Model.PanelLabels;
        var number = context.NumberOf(first) - 1;
        var printed = marks.Skip(number).Take(width).ToList();
        return $"{context.Address(first, width)}{(printed.Count == width ? $" ({string.Join(", ", printed)})" : "")}";
    }

    /// <summary>Who listens to a feed.</summary>
    public static string Listener(FeedNode feed) => feed.Model.Person ?? $"the listener of '{feed.DisplayName}'";

    /// <summary>The pack that the panel names at a point: what is printed there without the side; null when nothing is printed.</summary>
    public static string? Pack(RuleContext context, PointIndex end)
    {
        var marks = context.GroupOf(end).Model.PanelLabels;
        var number = context.NumberOf(end);
        return marks.Count >= number ? Pack(marks[number - 1]) : null;
    }

    /// <summary>The pack that a mark of a panel names: <c>2</c> for <c>2L</c>.</summary>
    public static string Pack(string mark) => mark.TrimEnd('L', 'R').TrimEnd(' ', '-', '/').Trim();

    /// <summary>Whose ears a point is in, as what follows its address.</summary>
    public static string Kind(RuleContext context, PointIndex end) =>
        context.DeviceOf(end).Profile.Kind == DeviceKind.TransmitterRack ? "of an in-ear transmitter"
        : EndKinds.IsHeadphone(context.GroupOf(end)) ? "for headphones"
        : "for somebody's ears";
}
