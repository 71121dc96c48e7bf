using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>Which levels meet where a cable is plugged.</summary>
internal static class CableLevels
{
    /// <summary>True when the cable connects and is the one that counts at an input: a second one there is told as a doubled sink.</summary>
    public static bool IsInPlace(RuleContext context, CableNode cable)
    {
        for (var position = 0; cable.State == ConnectionState.Connected && position < cable.Model.To.Width; position++)
        {
            if (context.Via(cable.To + position) == HopKind.Cable && context.ViaIndex(cable.To + position) == cable.Index)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How bad the meeting of two groups is; null when it is none, or not known to be.</summary>
    public static Severity? Judge(GroupNode from, GroupNode to)
    {
        if (from.Model.Level is not { } left || to.Model.Level is not { } right || left == right || !IsKnown(left) || !IsKnown(right))
        {
            return null;
        }

        return IsApart(left) || IsApart(right) ? Severity.Error : Severity.Warning;
    }

    private static bool IsApart(SignalLevel level) => level == SignalLevel.Speaker || level == SignalLevel.Aes3;

    private static bool IsKnown(SignalLevel level) => IsApart(level) || level == SignalLevel.Mic || level == SignalLevel.Line || level == SignalLevel.Headphone;
}
