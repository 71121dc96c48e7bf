namespace RoutingRules.Diagnosis;

/// <summary>What a repair does, in the order in which equal ones are preferred.</summary>
internal enum RepairKind
{
    /// <summary>Two of a kind change places.</summary>
    Exchange,

    /// <summary>A run moves by some places.</summary>
    Shift,

    /// <summary>Something is put in that is not there.</summary>
    Complete,

    /// <summary>Something that is too narrow becomes as wide as it must be.</summary>
    Widen,

    /// <summary>Something is taken out.</summary>
    Remove,

    /// <summary>Something takes another source.</summary>
    Repoint,
}
