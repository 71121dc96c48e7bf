using System.Text.Json;
using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>A row with what it makes of its feed or line.</summary>
/// <param name="Row">The row.</param>
/// <param name="Before">The feed or line in the show; null for a new one.</param>
/// <param name="After">The feed or line as the row has it.</param>
internal sealed record MergedRow(ListRow Row, object? Before, object After)
{
    /// <summary>The members that differ, in the order of the format; all that say something, for a new one.</summary>
    public ValueList<string> Members { get; } = Differences(Before, After);

    private static ValueList<string> Differences(object? before, object after)
    {
        if (after.Equals(before))
        {
            return default;
        }

        var old = before is null ? default : ElementJson.Of(before);
        var now = ElementJson.Of(after);
        return ListMember
            .Of(after is Feed ? IntentList.Feeds : IntentList.Lines)
            .Select(member => member.Name)
            .Where(name => !Same(old, now, name))
            .ToValueList();
    }

    private static bool Same(JsonElement before, JsonElement after, string name)
    {
        var isThere = after.TryGetProperty(name, out var now);
        return before.ValueKind == JsonValueKind.Object && before.TryGetProperty(name, out var old) ? isThere && JsonElement.DeepEquals(old, now) : !isThere;
    }
}
