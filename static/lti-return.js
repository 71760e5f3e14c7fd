// Sends what was chosen on to the learning platform; without a script a button does.
document.forms[0].submit();
