using RoutingRules.Rules;

namespace RoutingRules.Documents.Tables;

/// <summary>What the readers report: the part of family RR1 that is about the text of a document.</summary>
public static class ReadingRules
{
    private const string FormatDefinition = "format definition";

    /// <summary>The text is no readable JSON document at all.</summary>
    public static RuleDescriptor DocumentUnreadable { get; } =
        new()
        {
            Id = "RR1001",
            Name = "document-unreadable",
            Title = "Document cannot be read",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "The file is there, is UTF-8, is one complete JSON object, and is neither too large nor nested too deeply.",
            Why = "A file that was cut off or saved wrongly would otherwise be checked in part and look complete.",
            Remedy = "Mend the named line, or save the file again as UTF-8 without comments and without a comma before a closing bracket.",
            Source = "RFC 8259, sections 2, 7 and 8.1",
        };

    /// <summary>A member that the format does not have.</summary>
    public static RuleDescriptor MemberUnknown { get; } =
        new()
        {
            Id = "RR1002",
            Name = "member-unknown",
            Title = "Unknown member",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Every member is one that the format has at that place; anything goes under extensions only.",
            Why = "A misspelt member would be passed over, and with it what it was meant to say.",
            Remedy = "Correct the name, or move the content under extensions.",
            Source = FormatDefinition,
        };

    /// <summary>A member written twice in one object.</summary>
    public static RuleDescriptor MemberDuplicate { get; } =
        new()
        {
            Id = "RR1003",
            Name = "member-duplicate",
            Title = "Member written twice",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "No object holds two members of one name.",
            Why = "Programs disagree on which of the two counts, so two crews could read two different patches.",
            Remedy = "Keep one of the two.",
            Source = "RFC 8259, section 4",
        };

    /// <summary>A member that must be there is not.</summary>
    public static RuleDescriptor MemberMissing { get; } =
        new()
        {
            Id = "RR1004",
            Name = "member-missing",
            Title = "Member missing",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Every object holds the members that it cannot do without.",
            Why = "Without them the entry means nothing and would be left out.",
            Remedy = "Add the member.",
            Source = FormatDefinition,
        };

    /// <summary>A value of another JSON type than the member takes.</summary>
    public static RuleDescriptor ValueWrongType { get; } =
        new()
        {
            Id = "RR1005",
            Name = "value-wrong-type",
            Title = "Value of the wrong type",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Texts are texts, numbers are numbers, lists are lists, and null stands only where it has a meaning.",
            Why = "Guessing what was meant could patch the wrong thing.",
            Remedy = "Write the value as the message says.",
            Source = FormatDefinition,
        };

    /// <summary>A number, a length or a count outside what the member takes.</summary>
    public static RuleDescriptor ValueOutOfRange { get; } =
        new()
        {
            Id = "RR1006",
            Name = "value-out-of-range",
            Title = "Value out of range",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Numbers, lengths of texts and counts of lists are within the bounds of their member.",
            Why = "Values beyond them are slips of the pen or attacks, never real equipment.",
            Remedy = "Write a value within the bounds that the message names.",
            Source = FormatDefinition,
        };

    /// <summary>A text that is not in the form its member wants.</summary>
    public static RuleDescriptor ValueMalformed { get; } =
        new()
        {
            Id = "RR1007",
            Name = "value-malformed",
            Title = "Value in the wrong form",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Ids, addresses, dates and fixed words have their form, and texts hold no control characters.",
            Why = "An address that cannot be read leads nowhere.",
            Remedy = "Write the value in the form that the message shows.",
            Source = FormatDefinition,
        };

    /// <summary>Not exactly one of several members that exclude each other.</summary>
    public static RuleDescriptor MembersExclusive { get; } =
        new()
        {
            Id = "RR1008",
            Name = "members-exclusive",
            Title = "Members exclude each other",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "Where a place is either pinned or left open, or a count is fixed or depends on the sample rate, exactly one of the two is written.",
            Why = "With both or with neither nobody can tell which was meant.",
            Remedy = "Keep one of the members that the message names.",
            Source = FormatDefinition,
        };

    /// <summary>A format version the library cannot read.</summary>
    public static RuleDescriptor FormatVersionUnsupported { get; } =
        new()
        {
            Id = "RR1009",
            Name = "format-version-unsupported",
            Title = "Format version not supported",
            Family = RuleFamily.Document,
            Severity = Severity.Error,
            Checks = "The document is written in a format version that this version of the library knows.",
            Why = "A newer document may say things that an older reader would pass over.",
            Remedy = "Use a newer version of the library, or write the document in the version that the message names.",
            Source = FormatDefinition,
        };

    /// <summary>An older format version, brought up to date while reading.</summary>
    public static RuleDescriptor FormatUpgraded { get; } =
        new()
        {
            Id = "RR1010",
            Name = "format-upgraded",
            Title = "Format upgraded",
            Family = RuleFamily.Document,
            Severity = Severity.Note,
            Checks = "Whether the document was brought from an older format version to the present one.",
            Why = "Findings then come without lines and columns, because those of the upgraded text would mislead, and other tools may want the new version.",
            Remedy = "Write the document in the present version: routing-rules upgrade.",
            Source = FormatDefinition,
        };

    /// <summary>All of them, in the order of their ids.</summary>
    public static IReadOnlyList<RuleDescriptor> All { get; } =
    [
        DocumentUnreadable,
        MemberUnknown,
        MemberDuplicate,
        MemberMissing,
        ValueWrongType,
        ValueOutOfRange,
        ValueMalformed,
        MembersExclusive,
        FormatVersionUnsupported,
        FormatUpgraded,
    ];

    /// <summary>A value that reads well but means nothing, such as the name of a rule that there is not.</summary>
    internal static Finding Malformed(string message, string pointer) =>
        new()
        {
            Rule = ValueMalformed.Id,
            Name = ValueMalformed.Name,
            Severity = Severity.Error,
            Message = message,
            Entities = [Entity.Of("member", pointer)],
            Pointer = pointer,
        };
}
