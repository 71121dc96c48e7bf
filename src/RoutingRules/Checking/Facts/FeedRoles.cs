using RoutingRules.Model;

namespace RoutingRules.Checking.Facts;

/// <summary>What the known roles of feeds say about who hears them.</summary>
internal static class FeedRoles
{
    /// <summary>True for what only the crew and the band may hear.</summary>
    public static bool IsPrivate(FeedRole role) => role == FeedRole.Talkback || role == FeedRole.Click || role == FeedRole.Comms || role.Value == "intercom";

    /// <summary>True for loudspeakers that an audience hears.</summary>
    public static bool IsLoudspeaker(FeedRole role) =>
        role == FeedRole.Main || role == FeedRole.Sub || role == FeedRole.Fill || role == FeedRole.Delay || role.Value is "outfill" or "foyer";

    /// <summary>True for what an audience, listeners at home or people in danger hear.</summary>
    public static bool IsForAudience(FeedRole role) =>
        IsLoudspeaker(role) || role == FeedRole.Broadcast || role == FeedRole.Assistive || role == FeedRole.Evacuation;

    /// <summary>
    /// True for a role with which a mix may be meant for somebody's ears once it ends there: in-ear, a monitor, assistive listening, nothing said, or
    /// a word that is not known.
    /// </summary>
    public static bool MayBeForEars(FeedRole role) => role == FeedRole.Assistive || !(IsPrivate(role) || IsForAudience(role) || role == FeedRole.Record);
}
