namespace RoutingRules.Fixing;

/// <summary>What an edit does to a list.</summary>
public enum EditKind
{
    /// <summary>Puts an element in; those from the place on move up by one.</summary>
    Insert,

    /// <summary>Takes an element out.</summary>
    Remove,

    /// <summary>Puts an element in the place of another.</summary>
    Replace,
}
