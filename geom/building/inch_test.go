package building_test

const inch = 25.4 // mm, exactly
