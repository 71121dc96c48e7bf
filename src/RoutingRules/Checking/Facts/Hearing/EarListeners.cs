using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Hearing;

/// <summary>Who may wear what.</summary>
internal static class EarListeners
{
    /// <summary>True for two feeds that one person or one pack may have at once: a mix and its backup, the same bus twice, or the sides of one set.</summary>
    public static bool MayShare(FeedNode one, FeedNode other) =>
        one.Model.BackupOf == other.Model.Id
        || other.Model.BackupOf == one.Model.Id
        || one.Model.Source == other.Model.Source
        || (one.Model.Set is { } set && set == other.Model.Set && one.Model.Part is { } part && other.Model.Part is { } second && part != second);
}
