namespace RoutingRules.Documents.Tables;

/// <summary>
/// Patterns of texts, equal to what the readers accept except where a text is shaped well and still wrong (a range that runs backwards, 30 February).
/// </summary>
internal static class Patterns
{
    public const string IdPart = "[A-Za-z0-9][A-Za-z0-9._-]{0,63}";
    public const string Number = "[1-9][0-9]{0,4}";
    public const string Range = $"{Number}(-{Number})?";
    public const string Id = $"^{IdPart}$";
    public const string ProfileId = $"^{IdPart}(/{IdPart}){{0,2}}$";
    public const string PointRange = $"^{IdPart}/{IdPart}/{Range}$";
    public const string GroupRange = $"^{IdPart}/{Range}$";
    public const string Jack = $"^{IdPart}/{Number}$";
    public const string NumberRange = $"^{Range}$";
    public const string RuleSelector = $@"^{IdPart}\*?$";
    public const string Time = "^([01][0-9]|2[0-3]):[0-5][0-9]$";
    public const string Fingerprint = "^[0-9a-f]{16}$";
    public const string Date = "^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$";

    /// <summary>Lower-case words joined by single hyphens.</summary>
    public const string Word = "^[a-z0-9]+(-[a-z0-9]+)*$";
}
