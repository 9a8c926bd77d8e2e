namespace Programs.Classes.TimeSpans;

/// <summary>Time spans and calendar dates that are given, not asked for.</summary>
public static class P
{
    public static readonly TimeSpan Sum = TimeSpan.FromMinutes(90) + TimeSpan.FromSeconds(30);
    public static readonly double Hours = TimeSpan.FromMinutes(90).TotalHours;
    public static readonly string Text = TimeSpan.FromSeconds(3661).ToString();
    public static readonly bool Less = TimeSpan.FromMilliseconds(5) < TimeSpan.FromSeconds(1);
    public static readonly DateOnly Date = new DateOnly(2024, 2, 28).AddDays(2);
    public static readonly int Day = new DateTime(2023, 12, 31).AddDays(1).Year;
    public static readonly DayOfWeek Week = new DateOnly(2024, 2, 29).DayOfWeek;
    public static readonly int Days = (new DateTime(2024, 3, 1) - new DateTime(2024, 2, 1)).Days;
}
